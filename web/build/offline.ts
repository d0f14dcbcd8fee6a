import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { transformWithEsbuild, type Plugin } from "vite";

const text = /\.(html|js|mjs|css|svg|json|webmanifest|wasm|txt|tsv)$/;
const late = /paper|language/; // fetched into the cache after the first screens stand

/**
 * Makes the built app one versioned set: writes service_worker.js (its address never changes) with the
 * list of every file, asks the browser for the core early, and puts .br and .gz twins beside each file.
 */
export function offline({ worker }: { worker: string }): Plugin {
  return {
    name: "offline-set",
    apply: "build",
    enforce: "post",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle }) {
        const core = Object.keys(bundle ?? {}).find((name) => /swathbook-[^/]*\.wasm$/.test(name) && !late.test(name));
        const hint = core && `<link rel="preload" href="./${core}" as="fetch" type="application/wasm" crossorigin>`;
        return hint ? html.replace("</head>", `  ${hint}\n  </head>`) : html;
      },
    },
    async generateBundle(_options, bundle) {
      const files: Array<[string, Uint8Array | string]> = [];
      for (const name of ["manifest.webmanifest", "icon.svg", "icon-192.png", "icon-512.png", "apple-touch-icon.png"]) {
        files.push([name, readFileSync(new URL(`../public/${name}`, import.meta.url))]);
      }
      for (const [name, made] of Object.entries(bundle)) {
        if (!name.endsWith(".map")) files.push([name, made.type === "chunk" ? made.code : made.source]);
      }
      files.sort(([a], [b]) => (a < b ? -1 : 1));
      const digest = createHash("sha256");
      for (const [name, content] of files) digest.update(name).update(content);
      const source = readFileSync(worker, "utf8");
      const compiled = await transformWithEsbuild(source, worker, { target: "es2022", minify: true, loader: "ts" });
      const set = { version: digest.digest("hex").slice(0, 16), files: files.map(([name]) => name) };
      const code = `const set=${JSON.stringify(set)};\n${compiled.code}`;
      this.emitFile({ type: "asset", fileName: "service_worker.js", source: code });
      for (const [name, content] of [...files, ["service_worker.js", code] as [string, string]]) {
        if (!text.test(name)) continue;
        const bytes = Buffer.from(content);
        const quality = { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } };
        this.emitFile({ type: "asset", fileName: `${name}.gz`, source: gzipSync(bytes, { level: 9 }) });
        this.emitFile({ type: "asset", fileName: `${name}.br`, source: brotliCompressSync(bytes, quality) });
      }
    },
  };
}
