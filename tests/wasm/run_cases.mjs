// Every request of tests/cases, asked of swathbook.wasm: the answers must be the native ones, byte for byte.
//
//   node tests/wasm/run_cases.mjs [PRINT_ANSWERS [FOLDER_OF_MODULE]]

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";

const printAnswers = process.argv[2] ?? "build/dev/tests/print_answers";
const folder = resolve(process.argv[3] ?? "build/wasm/wasm");
const { open, SwathbookError } = await import(pathToFileURL(`${folder}/swathbook.mjs`));
const swathbook = await open(pathToFileURL(`${folder}/swathbook.wasm`));

const native = execFileSync(printAnswers, ["tests/cases"], { encoding: "utf8", maxBuffer: 2 ** 30 });
const cases = native.split("\n").filter(Boolean).map((line) => line.split("\t"));

let passed = 0;
const failures = [];
function check(name, body) {
  try {
    body();
    passed += 1;
  } catch (error) {
    failures.push(`${name}: ${error.message}`);
  }
}

// A difference is shown from the first byte that differs.
function sameBytes(wasm, wanted) {
  if (wasm === wanted) return;
  let at = 0;
  while (wasm[at] === wanted[at]) at += 1;
  const from = Math.max(0, at - 60);
  throw new Error(`differs at byte ${at}\n    native ${wanted.slice(from, at + 80)}\n    wasm   ${wasm.slice(from, at + 80)}`);
}

for (const [name, operation, request, answer] of cases) {
  check(name, () => {
    const { ok, json } = swathbook.callText(operation, request);
    sameBytes(json, answer);
    assert.equal(ok, !json.startsWith('{"error"'));
  });
}

check("an unknown operation is refused with the same code as everywhere", () => {
  assert.throws(() => swathbook.call("no-such-operation", {}), (error) => {
    assert.ok(error instanceof SwathbookError);
    assert.equal(error.code, "not_found");
    return true;
  });
});
check("a request that is not JSON is refused, whatever its bytes", () => {
  for (const text of ["", "{", "[]", "null", "\u0000", "{\"a\":1e999}", "é∞🌾", "[".repeat(100_000)]) {
    assert.equal(swathbook.callText("no-such-operation", text).ok, false);
    if (cases.length > 0) assert.equal(swathbook.callText(cases[0][1], text).ok, false);
  }
});
check("memory does not grow with the number of calls", () => {
  if (cases.length === 0) return;
  const pages = () => swathbook.memoryBytes();
  const ask = (count) => {
    for (let i = 0; i < count; i += 1) {
      const [, operation, request] = cases[i % cases.length];
      swathbook.callText(operation, request);
    }
  };
  ask(2 * cases.length + 100);
  const before = pages();
  ask(2 * cases.length + 3000);
  assert.equal(pages(), before);
});
// What each module may weigh, gzipped: what was reached, and 3 % (why there are three: decision 0010).
for (const [name, limit] of [["swathbook", 438_000], ["swathbook_book", 80_000], ["swathbook_paper", 312_000]]) {
  check(`${name}.wasm is at most ${limit / 1000} kB, gzipped`, () => {
    const size = gzipSync(readFileSync(`${folder}/${name}.wasm`), { level: 9 }).length;
    console.log(`${name}.wasm: ${(size / 1000).toFixed(1)} kB gzipped`);
    assert.ok(size <= limit, `${size} bytes`);
  });
}

for (const failure of failures.slice(0, 20)) console.error(failure);
console.log(`WebAssembly: ${cases.length} cases asked, ${passed} checks passed, ${failures.length} failed`);
process.exitCode = failures.length === 0 ? 0 : 1;
