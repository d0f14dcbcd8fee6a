// The app in Chromium on this machine: what a first load weighs, when it can be used on a processor four
// times slower, and how long a key press takes to become new numbers. Beside it the same page with nothing
// in it, so that what the browser itself needs can be told apart.

import { createServer } from "node:http";
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { extname, join, normalize, resolve } from "node:path";

const { chromium } = createRequire(resolve("web/package.json"))("playwright-core");
const dist = resolve("web/dist");
const limits = { weight: 350_000, interactive: 1000, keystroke: 16 };
const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json" };
const rooms = ["Sprayers", "Ground", "Jobs", "Field day", "Records", "Class"];
const failed = [];

function serve() {
  const server = createServer((request, response) => {
    const path = new URL(request.url, "http://localhost").pathname;
    if (path === "/bare.html") return response.end("<!doctype html><title>bare</title><p>nothing");
    const file = join(dist, normalize(path === "/" ? "/index.html" : path));
    if (!file.startsWith(dist) || !existsSync(file)) return response.writeHead(404).end();
    const packed = existsSync(`${file}.gz`);
    response.writeHead(200, { "content-type": types[extname(file)] ?? "application/octet-stream", ...(packed ? { "content-encoding": "gzip" } : {}) });
    response.end(readFileSync(packed ? `${file}.gz` : file));
  });
  return new Promise((done) => server.listen(0, "127.0.0.1", () => done({ server, url: `http://localhost:${server.address().port}/` })));
}

function report(what, value, unit, limit) {
  const good = value <= limit;
  if (!good) failed.push(what);
  console.log(`${what.padEnd(46)} ${value.toFixed(value < 100 ? 1 : 0).padStart(8)} ${unit}   (limit ${limit} ${unit})${good ? "" : "   MISSED"}`);
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

/** Opens every room once on a fresh profile and counts what came over the wire, the app's own worker aside. */
async function weigh(browser, url) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: "block" });
  const page = await context.newPage();
  const network = await context.newCDPSession(page);
  await network.send("Network.enable");
  const sizes = new Map();
  const names = new Map();
  network.on("Network.responseReceived", ({ requestId, response }) => names.set(requestId, response.url));
  network.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => sizes.set(requestId, encodedDataLength));
  await page.goto(url);
  for (const room of rooms) {
    await page.getByRole("link", { name: room, exact: true }).click();
    await page.getByRole("heading", { level: 1, name: room }).waitFor();
  }
  await page.waitForTimeout(300);
  let total = 0;
  let core = 0;
  for (const [id, size] of sizes) {
    total += size;
    if (names.get(id)?.endsWith(".wasm")) core += size;
  }
  await context.close();
  return { total, core };
}

async function interactive(browser, url, mark) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: "block" });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await page.goto(url);
  if (mark) await page.locator(".rooms").waitFor();
  const time = await page.evaluate((name) => (name ? performance.getEntriesByName(name)[0]?.startTime : performance.getEntriesByType("navigation")[0].domContentLoadedEventEnd), mark);
  await context.close();
  return time;
}

const { server, url } = await serve();
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
});
const { total, core } = await weigh(browser, url);
report("first load, all six rooms, gzip on the wire", total / 1000, "kB", limits.weight / 1000);
console.log(`${"  of it the core".padEnd(46)} ${(core / 1000).toFixed(0).padStart(8)} kB`);
const bare = [];
const app = [];
for (let round = 0; round < 5; round += 1) {
  bare.push(await interactive(browser, `${url}bare.html`));
  app.push(await interactive(browser, url, "swathbook interactive"));
}
report("interactive, processor 4 times slower", median(app), "ms", limits.interactive);
console.log(`${"  an empty page in the same runs".padEnd(46)} ${median(bare).toFixed(0).padStart(8)} ms   (ratio ${(median(app) / median(bare)).toFixed(1)})`);
await browser.close();
server.close();
if (failed.length > 0) {
  console.error(`missed: ${failed.join(", ")}`);
  process.exit(1);
}
