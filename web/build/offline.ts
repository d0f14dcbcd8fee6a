import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { transformWithEsbuild, type Plugin } from "vite";

const text = /\.(html|js|mjs|css|svg|json|webmanifest|wasm|txt|tsv)$/;

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
        const core = Object.keys(bundle ?? {}).find((name) => /swathbook-[^/]*\.wasm$/.test(name));
        const hint = core && `<link rel="preload" href="./${core}" as="fetch" type="application/wasm" crossorigin>`;
        return hint ? html.replace("</head>", `  ${hint}\n  </head>`) : html;
      },
    },
    // After everything is written: only then do the files hold what the browser will get.
    async writeBundle({ dir }) {
      if (dir === undefined) return;
      const files = filesUnder(dir);
      const digest = createHash("sha256");
      for (const name of files) digest.update(name).update(readFileSync(join(dir, name)));
      const set = { version: digest.digest("hex").slice(0, 16), files };
      const options = { target: "es2022", minify: true, loader: "ts", format: "iife" } as const;
      const { code } = await transformWithEsbuild(readFileSync(worker, "utf8"), worker, options);
      writeFileSync(join(dir, "service_worker.js"), `const set=${JSON.stringify(set)};\n${code}`);
      for (const name of [...files, "service_worker.js"]) if (text.test(name)) writeTwins(join(dir, name));
    },
  };
}

function filesUnder(root: string): string[] {
  return readdirSync(root, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(root, name)).isFile() && !name.endsWith(".map"))
    .map((name) => relative(root, join(root, name)).split(sep).join("/"))
    .sort();
}

function writeTwins(file: string): void {
  const bytes = readFileSync(file);
  writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
  writeFileSync(`${file}.br`, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }));
}
