// The printing half of the core, a WebAssembly module of its own: it is fetched when somebody first asks
// for paper, and it is among the files kept for use without a network.
import { open, SwathbookError } from "@wasm/swathbook.mjs";
import place from "@wasm/swathbook_paper.wasm?url";
import { spanishOfCore } from "@/words/words";
// The looks of the sheets: the same style sheet that goes into the printed pages of the command line.
import "../../../reports/html/paper.css";
import { PaperError } from "./desk";
import type { Order } from "./order";

type Module = Awaited<ReturnType<typeof open>>;
let opening: Promise<Module> | undefined;
let speaksSpanish = false;

function opened(): Promise<Module> {
  opening ??= open(new URL(place, location.href)).catch(() => {
    opening = undefined; // the next press may find the network again
    throw new PaperError("away");
  });
  return opening;
}

/**
 * The sheets of an order as HTML, made on this phone.
 * @throws PaperError when a part was refused, or the module could not be fetched
 */
export async function sheetsOf(order: Order): Promise<string> {
  const core = await opened();
  if (order.language === "es" && !speaksSpanish) {
    core.loadLanguage(await spanishOfCore());
    speaksSpanish = true;
  }
  try {
    return core.sheets(order);
  } catch (error) {
    if (error instanceof SwathbookError) throw new PaperError("refused", error);
    throw error;
  }
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
