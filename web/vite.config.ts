import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { offline } from "./build/offline";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  // Relative addresses: any static host, in any folder, can serve the built files.
  base: "./",
  resolve: { alias: { "@wasm": here("../build/wasm/wasm"), "@": here("src") } },
  esbuild: { jsx: "automatic", jsxImportSource: "preact" },
  build: {
    target: ["es2022", "safari16.4", "chrome91", "firefox100"],
    modulePreload: { polyfill: false },
    cssCodeSplit: false,
    assetsInlineLimit: 0, // a strict content policy takes no data: scripts or styles
    reportCompressedSize: false,
  },
  plugins: [offline({ worker: here("src/service_worker.ts") })],
  server: { fs: { allow: [here("..")] } },
  test: { include: ["src/**/*.test.ts"], setupFiles: ["build/page_stub.ts"] },
} as Parameters<typeof defineConfig>[0]);
