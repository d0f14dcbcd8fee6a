// Serves web/dist as any plain static host would: no server of ours behind it.
import { createServer, type Server } from "node:http";
import { readFile } from "node:fs/promises";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const dist = fileURLToPath(new URL("../dist", import.meta.url));
const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
  ".tsv": "text/tab-separated-values; charset=utf-8",
};

export interface StaticHost {
  url: string;
  /** From now on the host has another version of the app: its worker differs by a comment. */
  pretendNewer: () => void;
  close: () => Promise<void>;
}

export async function serveDist(): Promise<StaticHost> {
  let isNewer = false;
  const server: Server = createServer((request, response) => {
    const made = isNewer && request.url === "/service_worker.js" ? newerWorker() : answer(request.url ?? "/", request.headers["accept-encoding"] ?? "");
    void made.then(({ status, headers, body }) => {
      response.writeHead(status, headers);
      response.end(body);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const place = server.address();
  const port = typeof place === "object" && place !== null ? place.port : 0;
  return {
    url: `http://localhost:${port}/`,
    pretendNewer: () => (isNewer = true),
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

async function newerWorker() {
  const code = await readFile(join(dist, "service_worker.js"), "utf8");
  const body = code.replace(/version:?"?:?"([0-9a-f]{16})"/, (found, version: string) => found.replace(version, "f".repeat(16)));
  return { status: 200, headers: { "content-type": "text/javascript" }, body: `${body}\n// newer` };
}

async function answer(url: string, accepts: string) {
  const path = new URL(url, "http://localhost").pathname;
  const file = join(dist, normalize(path.endsWith("/") ? `${path}index.html` : path));
  const type = types[extname(file)] ?? "application/octet-stream";
  if (!file.startsWith(dist)) return { status: 404, headers: {}, body: "" };
  if (accepts.includes("gzip")) {
    const packed = await readFile(`${file}.gz`).catch(() => undefined);
    if (packed) return { status: 200, headers: { "content-type": type, "content-encoding": "gzip" }, body: packed };
  }
  const body = await readFile(file).catch(() => undefined);
  return body ? { status: 200, headers: { "content-type": type }, body } : { status: 404, headers: {}, body: "not here" };
}
