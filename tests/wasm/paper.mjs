// Printed sheets as HTML: the words of the PDF are all there, it is well formed, needs no style and no script, and
// WebAssembly makes the same bytes as the native program.
//
//   node tests/wasm/paper.mjs [FOLDER_OF_PROGRAMS [FOLDER_OF_MODULE]]

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, test } from "node:test";
import { pathToFileURL } from "node:url";

const programs = resolve(process.argv[2] ?? "build/dev/cli");
const folder = resolve(process.argv[3] ?? "build/wasm/wasm");
const { open, SwathbookError } = await import(pathToFileURL(`${folder}/swathbook.mjs`));
const scratch = mkdtempSync(join(tmpdir(), "swathbook-paper-"));
after(() => rmSync(scratch, { recursive: true }));

async function paperModule() {
  const paper = await open(readFileSync(`${folder}/swathbook_paper.wasm`));
  paper.loadLanguage(readFileSync("data/language/es.tsv", "utf8"));
  return paper;
}

// The order that `swathbook packet data/demo` makes.
function packetOrder(options = {}) {
  const { names, job, record_values } = JSON.parse(readFileSync("data/demo/packet.json", "utf8"));
  const files = readdirSync("data/demo").filter((file) => /^\d.*\.json$/.test(file)).sort();
  const operations = ["record-check", "tip-check", "calibrate", "loads", "area", "crew"];
  const parts = files.map((file) => {
    const stem = file.replace(/\.json$/, "");
    const operation = operations.find((name) => stem.replace(/^\d+-/, "").startsWith(name));
    return { file, name: names?.[stem] ?? stem, operation, request: readFileSync(`data/demo/${file}`, "utf8") };
  });
  return { job, record_values, parts, language: "en", paper: "letter", units: "us", printed_at: "2031-05-14T06:30:00Z",
    notebook: "01890a5d-ac96-774b-bcce-b302099a8057", model_version: "Swathbook test", ...options };
}
const worksheetOrder = { sheet: "worksheet", language: "en", paper: "a4", units: "metric", tips: 9, model_version: "Swathbook test" };

function printed(order, name) {
  const file = join(scratch, name);
  execFileSync(`${programs}/swathbook-paper`, [file], { input: JSON.stringify(order) });
  return file;
}

const plain = (html) => html.replace(/<style>.*?<\/style>/s, " ").replace(/<[^>]*>/g, " ")
  .replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&#39;", "'").replaceAll("&amp;", "&");
// Words as a set, without the marks at their ends; the PDF may break a line within a word at a hyphen or a slash.
const words = (text) => new Set(text.split(/[\s/\-\u2010-\u2015]+/u)
  .map((word) => word.replace(/^[("“]+|[),.;:"”]+$/gu, "")).filter((word) => word.length > 1));
// The space between a number and its sign can be lost in the text of a PDF.
const closed = (text) => text.replace(/(?<=\d)[ \u00a0\u2009\u202f](?=[%h])/gu, "");

const orders = [
  ["packet in English", packetOrder()],
  ["packet in Spanish and metric, A4", packetOrder({ language: "es", units: "metric", paper: "a4" })],
  ["worksheet", worksheetOrder],
];

for (const [name, order] of orders) {
  test(`${name}: the page holds every word of the PDF, and WebAssembly makes the same bytes`, async () => {
    const page = readFileSync(printed(order, "page.html"), "utf8");
    const pdf = execFileSync("pdftotext", ["-layout", printed(order, "page.pdf"), "-"], { encoding: "utf8", maxBuffer: 2 ** 26 });
    const onPage = new Set([...words(plain(page)), ...words(closed(plain(page)))]);
    const missing = [...words(pdf)].filter((word) => !onPage.has(word));
    // Numbers of pages and the head of a page that goes on belong to the paper, which the browser cuts.
    const ofPaper = /^(Page|Página|of|de|continued|continúa|continuación|\(continued\)|\(continúa\)|\d+)$/;
    assert.deepEqual(missing.filter((word) => !ofPaper.test(word)), []);
    const fragment = (await paperModule()).sheets(order);
    assert.ok(page.includes(fragment), "the fragment of WebAssembly is not in the native page");
  });

  test(`${name}: well formed, escaped, without style and script`, async () => {
    const fragment = (await paperModule()).sheets(order);
    execFileSync("python3", ["-c", "import sys, xml.dom.minidom as d; d.parseString(sys.stdin.buffer.read())"], { input: fragment });
    assert.doesNotMatch(fragment, /<script|<style|\sstyle=|\son\w+=|javascript:/i);
    const ids = [...fragment.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    assert.equal(new Set(ids).size, ids.length, "an id stands twice");
  });
}

test("figures are drawn in the page", async () => {
  const fragment = (await paperModule()).sheets(packetOrder());
  assert.ok(fragment.split("<svg").length > 1);
  assert.equal(fragment.split("<svg").length, fragment.split("</svg>").length);
  assert.doesNotMatch(fragment, /"-?(nan|inf)[",]/i);
});

test("what a user typed is shown and never becomes markup", async () => {
  const order = packetOrder();
  order.job = { ...order.job, name: `<img src=x onerror="alert(1)"> & 'Heron'` };
  const fragment = (await paperModule()).sheets(order);
  assert.ok(fragment.includes("&lt;img src=x onerror=&quot;alert(1)&quot;&gt; &amp; &#39;Heron&#39;"));
  assert.ok(!fragment.includes("<img"));
});

test("a load that takes rinse water has a card of its own and says how much water to run in", async () => {
  const fragment = (await paperModule()).sheets(packetOrder());
  assert.match(fragment, /of [\d.]+ gal of water, [\d.]+ gal is the rinse water of the jugs emptied \(\d+\): [\d.]+ gal to run in/);
  assert.match(fragment, /de [\d.]+ gal de agua, [\d.]+ gal es el enjuague de los envases vacíos \(\d+\): [\d.]+ gal por agregar/);
});

test("an order that cannot be printed is refused by name", async () => {
  const paper = await paperModule();
  const refused = (order, code, field) => assert.throws(() => paper.sheets(order), (error) => {
    assert.ok(error instanceof SwathbookError, String(error));
    assert.deepEqual([error.code, error.field], [code, field]);
    return true;
  });
  refused({ ...packetOrder(), language: "fr" }, "invalid_input", "language");
  refused({ ...packetOrder(), printed_at: "yesterday" }, "invalid_input", "printed_at");
  refused({ ...worksheetOrder, tips: 99 }, "out_of_range", "tips");
  refused([], "invalid_input", "");
  refused({ ...packetOrder(), parts: [{ name: "x", file: "01.json", operation: "water", request: "{}" }] }, "unsupported", "01.json: operation");
  for (const job of [7, null, "x", []]) assert.ok(paper.sheets({ ...packetOrder(), job }).startsWith("<article"));
});
