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

/**
 * The whole way of a calibration (width, course, passes, flow), then 200 key presses in its result, each
 * timed from the key's event until the new number stands in the page. The slowest is told as well.
 */
async function keystrokes(browser, url) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: "block" });
  await context.addInitScript(() => localStorage.setItem("swathbook settings", JSON.stringify({ author: "Bench", units: "us" })));
  const page = await context.newPage();
  const fill = (label, text) => page.getByLabel(label).and(page.locator("input")).first().fill(text);
  const next = () => page.locator(".save-bar a.main").click();
  await page.goto(`${url}#/sprayers`);
  await page.getByRole("link", { name: "Add a sprayer" }).first().click();
  await fill("Name", "Loaned rig");
  await page.getByRole("radio", { name: /^Boomless/ }).check({ force: true });
  await fill(/^Effective width/, "26");
  await page.locator(".save-bar").getByRole("button", { name: "Save" }).click();
  await page.getByRole("link", { name: "Calibrate" }).first().click();
  await page.getByRole("radio", { name: /^Flow and speed/ }).check({ force: true });
  await next();
  await fill("Length between the stakes", "176");
  await next();
  await fill(/^Or type a time/, "31.5");
  await page.getByRole("button", { name: "Add this time" }).first().click();
  await next();
  await page.getByRole("radio", { name: "a flow meter" }).check({ force: true });
  await fill("Flow of all tips together", "2.60");
  await next();
  await page.getByText("Compare with a sticker").click();
  await fill(/^Speed of the sticker/, "4");
  const box = page.getByLabel(/^Width of the sticker/).and(page.locator("input")).first();
  await box.fill("30");
  const answer = await page.locator(".figure.main .figure-value").first().innerText();
  if (!answer.startsWith("12.99")) throw new Error(`the page says ${answer}, not 12.99 gal/ac`);
  const times = await box.evaluate(async (input) => {
    const write = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set;
    const page = document.getElementById("app");
    const taken = [];
    for (let press = 0; press < 200; press += 1) {
      const width = 20 + (press % 17) + 0.5;
      const changed = new Promise((resolve) => {
        const watch = new MutationObserver(() => {
          watch.disconnect();
          resolve(performance.now());
        });
        watch.observe(page, { subtree: true, characterData: true, childList: true });
      });
      const pressed = performance.now();
      write.call(input, String(width));
      input.dispatchEvent(new Event("input", { bubbles: true }));
      taken.push((await changed) - pressed);
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    }
    return taken.sort((a, b) => a - b);
  });
  await context.close();
  return { middle: times[100], slow: times[197] };
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
const { middle, slow } = await keystrokes(browser, url);
report("key press to new numbers, 99 of 100", slow, "ms", limits.keystroke);
console.log(`${"  the middle one".padEnd(46)} ${middle.toFixed(1).padStart(8)} ms`);
await browser.close();
server.close();
if (failed.length > 0) {
  console.error(`missed: ${failed.join(", ")}`);
  process.exit(1);
}
