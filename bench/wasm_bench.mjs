// The WebAssembly module: how large it is to fetch, how long it takes to start and to answer, beside
// plain JavaScript doing the bare sum on the same JSON (no units, no interval, no findings).

import { readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { brotliCompressSync, gzipSync } from "node:zlib";

const folder = resolve("build/wasm/wasm");
const limit = 438_000;
const bytes = readFileSync(`${folder}/swathbook.wasm`);
const gzipped = gzipSync(bytes, { level: 9 }).length;
const kB = (size) => `${(size / 1000).toFixed(1)} kB`;
console.log(`swathbook.wasm                ${kB(bytes.length)}, gzip ${kB(gzipped)}, brotli ${kB(brotliCompressSync(bytes).length)} (limit gzip ${kB(limit)})`);

const { open } = await import(pathToFileURL(`${folder}/swathbook.mjs`));
const began = performance.now();
const swathbook = await open(bytes);
const request = '{"sprayer":"boomless","width":"26 ft","course_length":"176 ft","course_times":["31.5 s"],"flow":"2.60 gal/min"}';
const first = JSON.parse(swathbook.callText("calibrate", request).json);
console.log(`compile, start, first answer  ${(performance.now() - began).toFixed(1)} ms`);

const plain = '{"width_ft":26,"length_ft":176,"times_s":[31.5],"flow_gal_min":2.6}';
function bareSum(json) {
  const r = JSON.parse(json);
  const time = r.times_s.reduce((a, b) => a + b, 0) / r.times_s.length;
  return JSON.stringify({ output: (495 * r.flow_gal_min) / ((r.length_ft / time) * (3600 / 5280) * r.width_ft) });
}

function microseconds(ask) {
  for (let i = 0; i < 20_000; i += 1) ask();
  const rounds = [];
  for (let round = 0; round < 7; round += 1) {
    const start = performance.now();
    for (let i = 0; i < 5_000; i += 1) ask();
    rounds.push((performance.now() - start) / 5);
  }
  return rounds.sort((a, b) => a - b)[3];
}

const ours = microseconds(() => swathbook.callText("calibrate", request));
const theirs = microseconds(() => bareSum(plain));
console.log(`calibrate, JSON to JSON       ${ours.toFixed(2)} us`);
console.log(`JavaScript, the bare sum      ${theirs.toFixed(2)} us (${(theirs / ours).toFixed(2)}x)`);

const apart = Math.abs(first.output.value / JSON.parse(bareSum(plain)).output - 1);
if (apart > 1e-11) throw new Error(`the two answers differ by ${apart}`);
if (gzipped > limit) throw new Error(`${gzipped} bytes gzipped, limit ${limit}`);
