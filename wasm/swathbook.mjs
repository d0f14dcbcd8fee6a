// Loads swathbook.wasm in a browser, a worker or Node, and calls its operations.
//
//   import { open } from "./swathbook.mjs";
//   const swathbook = await open(new URL("swathbook.wasm", import.meta.url));
//   const answer = swathbook.call("calibrate", { kind: "boomless", ... });   // an object
//   const text = swathbook.callText("calibrate", "{...}");                   // { ok, json }, the exact bytes

const encoder = new TextEncoder();
const decoder = new TextDecoder("utf-8", { fatal: true });

/** What an operation refused: the same code, field and detail on every face. */
export class SwathbookError extends Error {
  constructor({ code, field, detail }) {
    super(field ? `${field}: ${detail}` : detail);
    this.name = "SwathbookError";
    this.code = code;
    this.field = field;
    this.detail = detail;
  }
}

// The core opens no files and reads no clock. What its C library asks of a system is answered here:
// nothing is there (8: bad file), text for people on the error stream goes to the console.
function systemStubs(memory) {
  const badFile = 8;
  return {
    fd_close: () => badFile,
    fd_fdstat_get: () => badFile,
    fd_seek: () => badFile,
    fd_read: () => badFile,
    fd_write: (descriptor, list, count, writtenAt) => {
      const view = new DataView(memory().buffer);
      let text = "";
      let written = 0;
      for (let i = 0; i < count; i += 1) {
        const start = view.getUint32(list + 8 * i, true);
        const size = view.getUint32(list + 8 * i + 4, true);
        text += new TextDecoder().decode(new Uint8Array(memory().buffer, start, size));
        written += size;
      }
      view.setUint32(writtenAt, written, true);
      if (text.trim() !== "") console.error(text.trimEnd());
      return 0;
    },
    environ_sizes_get: (countAt, sizeAt) => {
      const view = new DataView(memory().buffer);
      view.setUint32(countAt, 0, true);
      view.setUint32(sizeAt, 0, true);
      return 0;
    },
    environ_get: () => 0,
    proc_exit: (status) => {
      throw new WebAssembly.RuntimeError(`the module ended with status ${status}`);
    },
  };
}

// Any call of the system that is not named above is refused (52: not there).
function importsFor(module, memory) {
  const stubs = systemStubs(memory);
  const imports = {};
  for (const { module: space, name } of WebAssembly.Module.imports(module)) {
    imports[space] ??= {};
    imports[space][name] = stubs[name] ?? (() => 52);
  }
  return imports;
}

async function compile(source) {
  if (source instanceof WebAssembly.Module) return source;
  if (source instanceof ArrayBuffer || ArrayBuffer.isView(source)) return WebAssembly.compile(source);
  const url = new URL(source, globalThis.location?.href);
  if (url.protocol === "file:") {
    const { readFile } = await import("node:fs/promises");
    return WebAssembly.compile(await readFile(url));
  }
  return WebAssembly.compileStreaming(fetch(url));
}

/** One running module. A trap (a fault of ours) leaves it broken; the next call starts a fresh one. */
class Swathbook {
  #module;
  #exports = null;
  #starts = 0;
  #operations = null;
  #language = null;

  /** Called when a fresh module has taken the place of a broken one: its notebook is empty. */
  onRestart = null;

  constructor(module) {
    this.#module = module;
  }

  /** How often the module was started anew. When it has grown, open the notebook and add its entries again. */
  get epoch() {
    return Math.max(0, this.#starts - 1);
  }

  #running() {
    if (this.#exports === null) {
      let memory = null;
      const instance = new WebAssembly.Instance(this.#module, importsFor(this.#module, () => memory));
      memory = instance.exports.memory;
      instance.exports._initialize();
      this.#exports = instance.exports;
      if (this.#language !== null) this.#takeLanguage(this.#language);
      this.#starts += 1;
      if (this.#starts > 1) this.onRestart?.(this);
    }
    return this.#exports;
  }

  // A module without operations only keeps the text, for the one that has them.
  #takeLanguage(text) {
    if (this.#running().swathbook_language === undefined) return true;
    return this.#ask([text], (exports, ...places) => exports.swathbook_language(...places)).ok;
  }

  /** Takes the text of data/language/es.tsv; then requests may say language: "es". False when it is none. */
  loadLanguage(text) {
    const ok = this.#operations === null ? this.#takeLanguage(text) : this.#operations.loadLanguage(text);
    if (ok) this.#language = text;
    return ok;
  }

  // Runs `ask` with the texts (or bytes) in linear memory; returns what the module then holds as its result.
  #ask(texts, ask) {
    const exports = this.#running();
    const placed = [];
    try {
      for (const text of texts) {
        const bytes = typeof text === "string" ? encoder.encode(text) : text;
        const at = exports.swathbook_reserve(bytes.length);
        if (at === 0) throw new RangeError(`no memory for a request of ${bytes.length} bytes`);
        placed.push([at, bytes.length]);
        new Uint8Array(exports.memory.buffer, at, bytes.length).set(bytes);
      }
      const ok = ask(exports, ...placed.flat()) === 1;
      const result = new Uint8Array(exports.memory.buffer, exports.swathbook_text(), exports.swathbook_text_size());
      const json = decoder.decode(result);
      for (const [at] of placed) exports.swathbook_release(at);
      return { ok, json };
    } catch (error) {
      this.#exports = null;
      throw error;
    }
  }

  /** The operation's answer as JSON text, byte for byte what the command line and the server give. */
  callText(operation, request) {
    if (this.#operations !== null) return this.#operations.callText(operation, request);
    return this.#ask([operation, request], (exports, ...places) => exports.swathbook_call(...places));
  }

  /** The operation's answer as an object. @throws SwathbookError when it was refused */
  call(operation, request) {
    const { ok, json } = this.callText(operation, JSON.stringify(request));
    const answer = JSON.parse(json);
    if (!ok) throw new SwathbookError(answer.error);
    return answer;
  }

  /**
   * One act on the notebook held by the module; swathbook.d.mts says what each takes and gives.
   * @throws SwathbookError when it was refused: then nothing has changed
   */
  book(act, request) {
    const { ok, json } = this.#ask([act, JSON.stringify(request)], (exports, ...places) => exports.swathbook_book(...places));
    const answer = JSON.parse(json);
    if (!ok) throw new SwathbookError(answer.error);
    return answer;
  }

  /** Takes the operations from another module, compiled while the first screen is shown: open(swathbook_book.wasm) first. */
  async loadOperations(source) {
    const operations = await open(source);
    if (this.#language !== null) operations.loadLanguage(this.#language);
    this.#operations = operations;
  }

  /** Whether operations can be asked: at once in swathbook.wasm, after loadOperations in swathbook_book.wasm. */
  get hasOperations() {
    return this.#operations !== null || this.#running().swathbook_call !== undefined;
  }

  /**
   * The sheets of an order as one HTML element; needs swathbook_paper.wasm.
   * @throws SwathbookError when it was refused
   */
  sheets(order) {
    const { ok, json } = this.#ask([JSON.stringify(order)], (exports, ...places) => exports.swathbook_sheets(...places));
    if (!ok) throw new SwathbookError(JSON.parse(json).error);
    return json;
  }

  /** BLAKE2b-256 of some bytes, as 64 hexadecimal digits: the name of an attachment. */
  digest(bytes) {
    return this.#ask([bytes], (exports, ...places) => exports.swathbook_digest(...places)).json;
  }

  /** How much linear memory the running module holds. */
  memoryBytes() {
    return this.#running().memory.buffer.byteLength;
  }
}

/** Opens the module from a URL, bytes or an already compiled WebAssembly.Module. */
export async function open(source) {
  return new Swathbook(await compile(source));
}
