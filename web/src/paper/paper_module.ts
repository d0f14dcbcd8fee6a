// The printing half of the core, a WebAssembly module of its own: it is fetched when somebody first asks
// for paper, and it is among the files kept for use without a network.
import type { Refusal } from "@/core/core";
import { PaperError } from "./desk";
import type { Order } from "./order";

const places = import.meta.glob<string>("../../../build/wasm/wasm/swathbook_paper.wasm", { query: "?url", import: "default" });
const [place] = Object.values(places);
// The looks of the sheets: the same style sheet that goes into the printed pages of the command line.
import.meta.glob("../../../reports/html/paper.css", { eager: true });

/** False in an app that was built without the printing half. */
export const canMakeSheets = place !== undefined;

interface Exports {
  memory: WebAssembly.Memory;
  _initialize?: () => void;
  swathbook_reserve(size: number): number;
  swathbook_release(at: number): void;
  swathbook_sheets(at: number, size: number): number;
  swathbook_text(): number;
  swathbook_text_size(): number;
}

let compiled: Promise<WebAssembly.Module> | undefined;

async function fetchModule(): Promise<WebAssembly.Module> {
  if (place === undefined) throw new PaperError("away");
  const address = new URL(await place(), location.href);
  return WebAssembly.compileStreaming(fetch(address)).catch(() => {
    compiled = undefined;
    throw new PaperError("away");
  });
}

// It opens no files and reads no clock: whatever it asks of a system is refused (52: not there).
function start(module: WebAssembly.Module): Exports {
  const imports: Record<string, Record<string, () => number>> = {};
  for (const { module: space, name } of WebAssembly.Module.imports(module)) (imports[space] ??= {})[name] = () => 52;
  const exports = new WebAssembly.Instance(module, imports).exports as unknown as Exports;
  exports._initialize?.();
  return exports;
}

/**
 * The sheets of an order as HTML, made on this phone.
 * @throws PaperError when a part was refused, or the module could not be fetched
 */
export async function sheetsOf(order: Order): Promise<string> {
  compiled ??= fetchModule();
  const core = start(await compiled);
  const bytes = new TextEncoder().encode(JSON.stringify(order));
  const at = core.swathbook_reserve(bytes.length);
  if (at === 0) throw new PaperError("away");
  new Uint8Array(core.memory.buffer, at, bytes.length).set(bytes);
  const isWell = core.swathbook_sheets(at, bytes.length) === 1;
  const text = new TextDecoder().decode(new Uint8Array(core.memory.buffer, core.swathbook_text(), core.swathbook_text_size()));
  if (isWell) return text;
  throw new PaperError("refused", (JSON.parse(text) as { error: Refusal }).error);
}

const kept = new Set(["class", "id", "lang", "scope", "colspan", "rowspan", "role", "viewBox", "d", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "width", "height", "points", "transform", "fill", "stroke", "stroke-width", "stroke-dasharray", "text-anchor", "font-size", "font-weight", "paint-order", "stroke-linejoin", "dominant-baseline", "preserveAspectRatio", "patternUnits", "xmlns", "start", "title"]);
const isKept = (name: string) => kept.has(name) || name.startsWith("aria-") || name.startsWith("data-");

/** The HTML as nodes of this page: nothing in it runs, loads or carries a style of its own. */
export function nodesOf(html: string): DocumentFragment {
  const read = new DOMParser().parseFromString(html, "text/html");
  for (const element of read.querySelectorAll("script, style, link, meta, iframe, object, embed, base, form")) element.remove();
  for (const element of read.body.querySelectorAll("*")) {
    for (const { name } of [...element.attributes]) if (!isKept(name)) element.removeAttribute(name);
  }
  const fragment = document.createDocumentFragment();
  for (const node of [...read.body.childNodes]) fragment.append(document.adoptNode(node));
  return fragment;
}
