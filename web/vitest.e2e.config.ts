import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

// Journeys through the built app in a real browser: one after the other, each with a notebook of its own.
export default defineConfig({
  resolve: { alias: { "@wasm": fileURLToPath(new URL("../build/wasm/wasm", import.meta.url)), "@": fileURLToPath(new URL("src", import.meta.url)) } },
  test: { include: ["e2e/**/*.e2e.ts"], testTimeout: 120_000, hookTimeout: 60_000, fileParallelism: false, pool: "forks" },
});
