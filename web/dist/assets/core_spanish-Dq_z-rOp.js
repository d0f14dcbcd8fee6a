const e=""+new URL("es-B_SY1GJM.tsv",import.meta.url).href;export{e as default};
