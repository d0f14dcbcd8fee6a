const e=""+new URL("es-CZEk-_lw.tsv",import.meta.url).href;export{e as default};
