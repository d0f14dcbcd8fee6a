// A thousand random requests for each operation: native code and WebAssembly must answer byte for byte the same. They
// grow from the requests of tests/cases, so a new operation with a case is asked without a word here.
//
//   node tests/wasm/random_requests.mjs [PRINT_ANSWERS [FOLDER_OF_MODULE [COUNT [SEED]]]]

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const printAnswers = process.argv[2] ?? "build/dev/tests/print_answers";
const folder = resolve(process.argv[3] ?? "build/wasm/wasm");
const count = Number(process.argv[4] ?? 1000);
const seed = Number(process.argv[5] ?? 20260514);
const { open } = await import(pathToFileURL(`${folder}/swathbook.mjs`));
const swathbook = await open(pathToFileURL(`${folder}/swathbook.wasm`));
swathbook.loadLanguage(readFileSync("data/language/es.tsv", "utf8"));

// mulberry32, in the public domain: small, and the same on every machine.
let state = seed >>> 0;
function random() {
  state = (state + 0x6d2b79f5) >>> 0;
  let t = Math.imul(state ^ (state >>> 15), state | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
}
const below = (n) => Math.floor(random() * n);
const pick = (list) => list[below(list.length)];

const native = (args, input) => execFileSync(printAnswers, args, { encoding: "utf8", input, maxBuffer: 2 ** 31 - 1 });
const lines = (text) => text.split("\n").filter(Boolean);

const seeds = new Map(lines(native(["--names"])).map((name) => [name, []]));
for (const line of lines(native(["tests/cases"]))) {
  const [, operation, request] = line.split("\t");
  try {
    seeds.get(operation)?.push(JSON.parse(request));
  } catch {
    // a case about text that is no JSON; it is asked as it stands by run_cases.mjs
  }
}

// What stands in the cases under each name: a value from another case is often possible here too.
const known = new Map();
function remember(value, name = "") {
  if (Array.isArray(value)) value.forEach((each) => remember(each, name));
  else if (value !== null && typeof value === "object") for (const [key, each] of Object.entries(value)) remember(each, key);
  else known.set(name, [...(known.get(name) ?? []), value]);
}
for (const requests of seeds.values()) requests.forEach((request) => remember(request));

const hostile = [null, true, -1, 0, -0, 1e-300, 1e308, 0.1, "", " ", "x", "-5 mph", "0 gal", "1e400 ac", "NaN", "Infinity ft", "5",
  "5 furlongs", "1,234.5 gal", "½ gal", "2 qt/ac/ac", "🌾", "\u0000", "<b>&\"'", "a".repeat(5000), [], {}, [[]], { a: 1 }, "12:60", "2031-02-30"];

// The number in a text like "20.5 gal/ac" made another; else a number made another.
function nudged(value) {
  const factor = pick([0.1, 0.5, 0.9, 0.999, 1.001, 1.1, 2, 10, 1000]);
  if (typeof value === "number") return Number.isInteger(value) && random() < 0.6 ? value + pick([-2, -1, 1, 2, 7]) : value * factor;
  if (typeof value !== "string") return value;
  return value.replace(/\d+(\.\d+)?/, (digits) => {
    const decimals = below(5);
    return (Number(digits) * factor).toFixed(decimals);
  });
}

function changedLeaf(value, name) {
  const roll = random();
  if (roll < 0.5) return nudged(value);
  if (roll < 0.75 && known.has(name)) return pick(known.get(name));
  if (roll < 0.85) return pick(known.get(pick([...known.keys()])));
  return pick(hostile);
}

// One small change somewhere in the request.
function change(value, name = "") {
  if (value === null || typeof value !== "object") return changedLeaf(value, name);
  const copy = Array.isArray(value) ? [...value] : { ...value };
  const keys = Object.keys(copy);
  const roll = random();
  if (keys.length === 0 || roll < 0.03) {
    if (Array.isArray(copy)) copy.push(pick(known.get(pick([...known.keys()]))));
    else copy[pick([...known.keys()])] = pick(hostile);
    return copy;
  }
  const key = pick(keys);
  if (roll < 0.1) {
    if (Array.isArray(copy)) copy.splice(Number(key), 1);
    else delete copy[key];
  } else if (roll < 0.15 && Array.isArray(copy)) {
    copy.push(copy[key]);
  } else {
    copy[key] = change(copy[key], Array.isArray(copy) ? name : key);
  }
  return copy;
}

function randomRequest(requests) {
  let request = pick(requests);
  for (let changes = pick([0, 1, 1, 1, 2, 2, 3, 5]); changes > 0; changes -= 1) request = change(request);
  if (random() < 0.5) request = { ...request, working: random() < 0.9 };
  if (random() < 0.5) request = { ...request, units: pick(["us", "metric", "metric"]) };
  if (random() < 0.25) request = { ...request, language: pick(["es", "es", "en", "fr"]) };
  const json = JSON.stringify(request);
  return random() < 0.01 ? json.slice(0, below(json.length)) : json;
}

const began = performance.now();
const asked = [];
const failures = [];
for (const [operation, requests] of seeds) {
  if (requests.length === 0) failures.push(`${operation}: no case in tests/cases to start from`);
  else for (let i = 0; i < count; i += 1) asked.push([operation, randomRequest(requests)]);
}
const answers = native(["--ask"], asked.map((each) => each.join("\t") + "\n").join("")).split("\n");
const answered = new Map();
asked.forEach(([operation, request], i) => {
  let got;
  try {
    got = swathbook.callText(operation, request);
  } catch (error) {
    got = { json: `trap: ${error.message}` };
    swathbook.loadLanguage(readFileSync("data/language/es.tsv", "utf8"));
  }
  if (got.ok) answered.set(operation, (answered.get(operation) ?? 0) + 1);
  if (got.json === answers[i]) return;
  let at = 0;
  while (got.json[at] === answers[i][at]) at += 1;
  const from = Math.max(0, at - 60);
  failures.push(`${operation}\n    ${request.slice(0, 1500)}\n    native ${answers[i].slice(from, at + 80)}\n    wasm   ${got.json.slice(from, at + 80)}`);
});
// A generator that only makes refusals would test little.
for (const [operation, requests] of seeds) {
  const share = (answered.get(operation) ?? 0) / count;
  if (requests.length > 0 && share < 0.1) failures.push(`${operation}: only ${Math.round(100 * share)} % of the requests were answered`);
}

for (const failure of failures.slice(0, 20)) console.error(failure);
const good = [...answered.values()].reduce((sum, each) => sum + each, 0);
console.log(`random requests, seed ${seed}: ${asked.length} asked of ${seeds.size} operations, ${good} answered, ` +
  `${failures.length} failed, ${((performance.now() - began) / 1000).toFixed(1)} s`);
process.exitCode = failures.length === 0 ? 0 : 1;
