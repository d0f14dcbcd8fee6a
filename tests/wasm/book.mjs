// The notebook in WebAssembly beside the native program: what one seals the other takes in, and both come to the same
// state.
//
//   node tests/wasm/book.mjs [PROGRAM [FOLDER_OF_MODULE]]

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, test } from "node:test";
import { pathToFileURL } from "node:url";

const program = resolve(process.argv[2] ?? "build/dev/cli/swathbook");
const folder = resolve(process.argv[3] ?? "build/wasm/wasm");
const { open, SwathbookError } = await import(pathToFileURL(`${folder}/swathbook.mjs`));
const bytes = readFileSync(`${folder}/swathbook.wasm`);
const scratch = mkdtempSync(join(tmpdir(), "swathbook-book-"));
after(() => rmSync(scratch, { recursive: true }));

const now = Date.UTC(2026, 3, 9, 14, 3, 5);
const kinds = ["sprayer", "tip_set", "stand", "job", "record"];
const random = () => randomBytes(10).toString("hex");
const native = (...words) => execFileSync(program, ["notebook", ...words], { encoding: "utf8" });

async function bookOf(device) {
  const book = await open(bytes);
  book.newId = () => book.book("uuid", { now_ms: now, random: random() }).id;
  book.device = device ?? book.newId();
  book.book("open", { device: book.device, now_ms: now });
  return book;
}

// Seals and adds at once, as a page does when nothing can fail in between.
function write(book, kind, subject, body, at = now) {
  const drafts = [{ author: "A. Field", kind, subject, body }];
  const { entries } = book.book("seal", { drafts, now_ms: at, random: [random()] });
  assert.deepEqual(book.book("add", { entries, now_ms: at }), { refused: [], added: 1 });
  return entries;
}

function refusal(code, field, act) {
  assert.throws(act, (error) => {
    assert.ok(error instanceof SwathbookError, String(error));
    assert.equal(error.code, code);
    assert.equal(error.field, field);
    return true;
  });
}

function stateOf(book) {
  return book.book("state", {});
}

// The things as the native program lists them.
function wasmList(book) {
  return kinds.flatMap((kind) =>
    book.book("things", { kind }).things.map(({ id, fields, closed }) => ({ kind, id, closed: closed !== undefined, body: fields })));
}
function nativeList(file) {
  return JSON.parse(native("list", "--json", "--notebook", file)).filter(({ kind }) => kind !== "amendment");
}

async function season() {
  const book = await bookOf();
  const [rig, stand, record] = [book.newId(), book.newId(), book.newId()];
  const texts = [
    write(book, "sprayer", rig, { name: "Boom rig", swath: "180 in", "note.es": "añadido ✓" }),
    write(book, "stand", stand, { name: "North", area: "12.50 ac", trees: 12.5, slope: null, parts: [1, 2.25, { a: true }] }),
    write(book, "stand", stand, { name: "North field" }, now + 1000),
    write(book, "record", record, { date: "2026-04-09", note: "draft" }, now + 2000),
    write(book, "record", record, { closed: true, date: "2026-04-09", total_product: "5.6 gal" }, now + 3000),
    write(book, "amendment", record, { date: "2026-04-12", reason: "jug count", total_product: "5.4 gal" }, now + 4000),
  ];
  return { book, texts, rig, stand, record };
}

test("entries sealed in WebAssembly give the native notebook the same state, and its check passes", async () => {
  const { book, texts } = await season();
  const file = join(scratch, "native.gpkg");
  const travelling = join(scratch, "travelling.txt");
  writeFileSync(travelling, texts.join(""));
  native("new", file, "--author", "B. Field");
  assert.match(native("merge", travelling, "--notebook", file), /^6 entries added, 0 were here already, 0 refused/);
  assert.match(native("check", "--notebook", file), /sound/);
  assert.deepEqual(nativeList(file), wasmList(book));
  assert.equal(native("export", "--notebook", file), texts.join(""));
});

test("entries of the native notebook come to the same state in WebAssembly", async () => {
  const file = join(scratch, "other.gpkg");
  native("new", file, "--author", "B. Field");
  for (const name of ["First", "Second"]) native("add", "stand", `name=${name}`, "area=12.50 ac", "--notebook", file);
  const record = native("add", "record", "date=2026-04-09", "--notebook", file).trim();
  native("close", record, "--notebook", file);
  native("amend", record, "--date", "2026-04-10", "--reason", "jug count", "--notebook", file);
  const book = await bookOf();
  const entries = native("export", "--notebook", file);
  assert.deepEqual(book.book("add", { entries, now_ms: Date.now() }), { refused: [], added: 5 });
  assert.deepEqual(wasmList(book), nativeList(file));
  assert.deepEqual(book.book("check", { entries }), { problems: [] });
});

test("any order, any repetition and any device of reading give the same digest and the same next entry", async () => {
  const { book, texts } = await season();
  const wanted = stateOf(book);
  assert.equal(wanted.entries, texts.length);
  const seal = { drafts: [{ author: "A. Field", kind: "job", subject: book.newId(), body: {} }], now_ms: now, random: ["00".repeat(10)] };
  const next = book.book("seal", seal);
  for (let round = 0; round < 50; round += 1) {
    const again = await bookOf(book.device);
    const shuffled = [...texts, texts[round % texts.length]].map((text) => [Math.random(), text]).sort().map(([, text]) => text);
    let added = 0;
    for (const text of shuffled) added += again.book("add", { entries: text, now_ms: now }).added;
    assert.equal(added, texts.length);
    assert.deepEqual(stateOf(again), wanted);
    assert.deepEqual(again.book("seal", seal), next);
  }
  const elsewhere = await bookOf();
  elsewhere.book("add", { entries: texts.join(""), now_ms: now });
  assert.equal(stateOf(elsewhere).digest, wanted.digest);
});

test("a thing says its fields, who changed it last and when, and how it was closed and amended", async () => {
  const { book, stand, record } = await season();
  assert.deepEqual(book.book("thing", { kind: "stand", id: stand }), {
    id: stand,
    fields: { area: "12.50 ac", name: "North field", parts: [1, 2.25, { a: true }], trees: 12.5 },
    changed: "2026-04-09T14:03:06.000Z",
    author: "A. Field",
    created: "2026-04-09T14:03:05.000Z",
  });
  const closed = book.book("things", { kind: "record" }).things[0];
  assert.deepEqual(closed.fields, { closed: true, date: "2026-04-09", total_product: "5.6 gal" });
  assert.deepEqual(closed.closed, { at: "2026-04-09T14:03:08.000Z", by: "A. Field" });
  assert.deepEqual(closed.amendments, [
    { at: "2026-04-09T14:03:09.000Z", author: "A. Field", body: { date: "2026-04-12", reason: "jug count", total_product: "5.4 gal" } },
  ]);
  refusal("not_found", "id", () => book.book("thing", { kind: "stand", id: record }));
  refusal("invalid_input", "kind", () => book.book("things", { kind: "barn" }));
});

test("a field cleared last says so in the time of the change", async () => {
  const book = await bookOf();
  const job = book.newId();
  write(book, "job", job, { note: "a", name: "b" });
  write(book, "job", job, { note: null }, now + 60_000);
  const { fields, changed } = book.book("thing", { kind: "job", id: job });
  assert.deepEqual({ fields, changed }, { fields: { name: "b" }, changed: "2026-04-09T14:04:05.000Z" });
});

test("a closed record is not changed and an open one not amended, also within one seal", async () => {
  const { book, record } = await season();
  const draft = (kind, subject, body) => ({ author: "A. Field", kind, subject, body });
  const seal = (...drafts) => book.book("seal", { drafts, now_ms: now, random: drafts.map(random) });
  const before = stateOf(book);
  refusal("not_permitted", "subject", () => seal(draft("record", record, { note: "late" })));
  const fresh = book.newId();
  const correction = { date: "2026-04-12", reason: "count" };
  refusal("not_permitted", "subject", () => seal(draft("amendment", fresh, correction)));
  refusal("not_permitted", "subject", () => seal(draft("record", fresh, { closed: true }), draft("record", fresh, { note: "late" })));
  refusal("invalid_input", "reason", () => seal(draft("amendment", record, { date: "2026-04-12" })));
  assert.equal(seal(draft("record", fresh, { closed: true }), draft("amendment", fresh, correction)).list.length, 2);
  assert.deepEqual(stateOf(book), before);
});

test("two drafts are one chain after the last entry", async () => {
  const { book, texts } = await season();
  const draft = (name) => ({ author: "A. Field", kind: "job", subject: book.newId(), body: { name } });
  const { entries, list } = book.book("seal", { drafts: [draft("one"), draft("two")], now_ms: now - 5000, random: [random(), random()] });
  assert.deepEqual(book.book("check", { entries: texts.join("") + entries }), { problems: [] });
  const parsed = book.book("parse_entries", { entries }).list;
  assert.equal(parsed.map(({ text }) => text).join(""), entries);
  assert.deepEqual(parsed.map(({ id, made, kind, subject }) => ({ id, made, kind, subject })), list);
  const { problems } = book.book("check", { entries });
  assert.deepEqual(problems.map(({ fault }) => fault), ["missing_link"]);
});

test("history is oldest first, whatever the order given, each entry once", async () => {
  const { book, texts, stand } = await season();
  const entries = [...texts].reverse().join("") + texts.join("");
  const { entries: past } = book.book("history", { entries, kind: "stand", subject: stand });
  assert.deepEqual(past.map(({ body }) => body.name), ["North", "North field"]);
  assert.equal(past[0].device, book.device);
});

test("what collides is told in a sentence", async () => {
  const { book, texts, record } = await season();
  const other = await bookOf();
  other.book("add", { entries: texts[3], now_ms: now });
  const late = write(other, "record", record, { note: "from the other phone" }, now + 9000);
  book.book("add", { entries: late, now_ms: now });
  const { conflicts } = book.book("conflicts", {});
  assert.equal(conflicts.length, 1);
  assert.equal(conflicts[0].kind, "edit_after_close");
  assert.match(conflicts[0].text, /^Entry .* on record .* changes the record after it was closed .*\.$/);
});

test("entries that were altered, forged or come from the future are refused and named; the others are taken", async () => {
  const { texts } = await season();
  const book = await bookOf();
  const altered = texts[1].replace("12.50 ac", "13.50 ac");
  const entries = [texts[0], altered, texts[2]].join("");
  const answer = book.book("add", { entries, now_ms: now });
  assert.equal(answer.added, 2);
  assert.deepEqual(answer.refused.map(({ code }) => code), ["corrupt_data"]);
  const early = book.book("add", { entries: texts[1], now_ms: now - 3 * 24 * 3_600_000 });
  assert.deepEqual(early.refused.map(({ code }) => code), ["out_of_range"]);
  refusal("corrupt_data", "line 3", () => book.book("add", { entries: texts[0].replace("author", "autor"), now_ms: now }));
});

test("bad requests are refused by the name of the member", async () => {
  const closed = await open(bytes);
  refusal("unavailable", "device", () => closed.book("things", { kind: "stand" }));
  refusal("not_found", "", () => closed.book("burn", {}));
  refusal("invalid_input", "device", () => closed.book("open", { device: "me", now_ms: now }));
  const book = await bookOf();
  refusal("invalid_input", "now_ms", () => book.book("open", { device: book.device, now_ms: NaN }));
  refusal("invalid_input", "entries", () => book.book("add", { now_ms: now }));
  const draft = { author: "A. Field", kind: "job", subject: book.newId(), body: {} };
  refusal("invalid_input", "random", () => book.book("seal", { drafts: [draft], now_ms: now, random: [] }));
  refusal("invalid_input", "random[0].random", () => book.book("seal", { drafts: [draft], now_ms: now, random: ["xyz"] }));
  refusal("invalid_input", "drafts[0].subject", () => book.book("seal", { drafts: [{ ...draft, subject: 7 }], now_ms: now, random: [random()] }));
  refusal("invalid_input", "body", () => book.book("seal", { drafts: [{ ...draft, body: { "Bad name": 1 } }], now_ms: now, random: [random()] }));
  refusal("invalid_input", "author", () => book.book("seal", { drafts: [{ ...draft, author: "" }], now_ms: now, random: [random()] }));
});

test("open forgets everything", async () => {
  const { book } = await season();
  const { digest } = stateOf(await bookOf());
  book.book("open", { device: book.newId(), now_ms: now });
  assert.deepEqual(stateOf(book), { digest, entries: 0 });
});

test("after a trap a fresh module answers, tells so, and its notebook is not open", async () => {
  const { book } = await season();
  let told = 0;
  book.onRestart = () => { told += 1; };
  assert.equal(book.epoch, 0);
  assert.throws(() => book.digest({ length: 2 ** 32 }));
  refusal("unavailable", "device", () => stateOf(book));
  assert.deepEqual([book.epoch, told], [1, 1]);
});

test("a digest is BLAKE2b-256, as b2sum prints it", async () => {
  const book = await open(bytes);
  const file = join(scratch, "photo.bin");
  for (const size of [0, 1, 127, 128, 129, 1_000_000]) {
    const content = randomBytes(size);
    writeFileSync(file, content);
    assert.equal(book.digest(content), execFileSync("b2sum", ["-l", "256", file], { encoding: "utf8" }).slice(0, 64));
  }
});

test("a notebook of 10,000 entries opens in time and its memory does not grow with each settling", async () => {
  const book = await bookOf();
  const ids = Array.from({ length: 200 }, () => book.newId());
  let text = "";
  for (let i = 0; i < 10_000; i += 500) {
    const drafts = Array.from({ length: 500 }, (_, j) => ({ author: "A. Field", kind: "record", subject: ids[(i + j) % 200], body: { note: `note ${i + j}`.repeat(20) } }));
    const { entries } = book.book("seal", { drafts, now_ms: now, random: drafts.map(random) });
    book.book("add", { entries, now_ms: now });
    text += entries;
  }
  const fresh = await bookOf();
  const begin = performance.now();
  assert.equal(fresh.book("add", { entries: text, now_ms: now }).added, 10_000);
  const digest = stateOf(fresh).digest;
  console.log(`10,000 entries added and settled in ${Math.round(performance.now() - begin)} ms`);
  assert.equal(digest, stateOf(book).digest);
  const before = fresh.memoryBytes();
  for (let i = 0; i < 200; i += 1) {
    write(fresh, "stand", ids[i], { name: `n${i}` });
    write(fresh, "record", ids[i], { note: "x" });
    stateOf(fresh);
  }
  assert.ok(fresh.memoryBytes() - before <= 4 << 20, `${fresh.memoryBytes() - before} bytes more`);
});
