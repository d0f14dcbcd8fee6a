// What swathbook.mjs offers, for TypeScript. Requests and answers of the operations have types of their own, made from
// their descriptions (`swathbook schema --typescript`).

export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };
export type JsonObject = { readonly [name: string]: Json };

export type EntryKind =
  | "sprayer" | "tip_set" | "operator" | "calibration" | "landowner" | "stand" | "setback" | "product_card" | "job"
  | "load" | "pass" | "reading" | "record" | "amendment" | "attachment";

export type ErrorCode =
  | "invalid_input" | "out_of_range" | "inconsistent" | "not_found" | "conflict" | "unsupported" | "not_permitted"
  | "corrupt_data" | "io" | "unavailable" | "internal";

export class SwathbookError extends Error {
  readonly code: ErrorCode;
  /** The member at fault, "catches[2]"; empty when no single one is. */
  readonly field: string;
  readonly detail: string;
}

export interface Draft {
  author: string;
  kind: EntryKind;
  /** The thing the entry is about: a UUID. For an amendment, the record. */
  subject: string;
  /** Names of a-z 0-9 _ and dot; null clears a field. */
  body: JsonObject;
}

export interface EntryPlace {
  id: string;
  made: string;
  kind: EntryKind;
  subject: string;
}

export interface ParsedEntry extends EntryPlace {
  device: string;
  author: string;
  /** The travelling text of this one entry. */
  text: string;
}

export interface Thing {
  id: string;
  fields: JsonObject;
  /** When the latest change that stands was made (RFC 3339, UTC), and by whom; empty when no field was ever set. */
  changed: string;
  author: string;
  /** When the earliest change that stands was made. */
  created: string;
  /** A record that is closed. */
  closed?: { at: string; by: string };
  /** Corrections of a record, oldest first; absent when there are none. */
  amendments?: { at: string; author: string; body: JsonObject }[];
}

export interface Refusal {
  id: string;
  code: ErrorCode;
  detail: string;
}

export interface Conflict {
  kind: "edit_after_close" | "closed_twice" | "draft_not_in_record" | "amends_open_record" | "incomplete_amendment";
  record: string;
  entry: string;
  field?: string;
  /** One sentence for people. */
  text: string;
}

export interface ChainProblem {
  device: string;
  entry: string;
  fault: "altered" | "missing_link" | "fork" | "out_of_order" | "same_id";
  /** One sentence for people. */
  text: string;
}

export interface PastEntry {
  id: string;
  made: string;
  author: string;
  device: string;
  body: JsonObject;
}

type Nothing = Record<string, never>;

/** The acts on the notebook in the module's memory. "entries" is the text in which entries travel. */
export interface BookActs {
  /** Forgets everything; entries sealed from now on belong to this device's chain. */
  open: { request: { device: string; now_ms: number }; answer: Nothing };
  /** Takes in entries, of any device, in any order; one that is here already counts once. */
  add: { request: { entries: string; now_ms: number }; answer: { added: number; refused: Refusal[] } };
  /**
   * Makes the next entries of this device's chain, all or none, and does not add them. Keep them, then add them, and
   * only then seal again: hold one lock over the three, across tabs too. `random`: 20 hexadecimal digits a draft.
   */
  seal: {
    request: { drafts: readonly Draft[]; now_ms: number; random: readonly string[] };
    answer: { entries: string; list: EntryPlace[] };
  };
  things: { request: { kind: EntryKind }; answer: { things: Thing[] } };
  thing: { request: { kind: EntryKind; id: string }; answer: Thing };
  /** The entries about one thing, oldest first, among those given. */
  history: { request: { entries: string; kind: EntryKind; subject: string }; answer: { entries: PastEntry[] } };
  conflicts: { request: Nothing; answer: { conflicts: Conflict[] } };
  /** Checks the chains of the entries given. */
  check: { request: { entries: string }; answer: { problems: ChainProblem[] } };
  /** Two notebooks are in the same state when their digests are equal. */
  state: { request: Nothing; answer: { digest: string; entries: number } };
  /** Splits a text into entries without checking them. */
  parse_entries: { request: { entries: string }; answer: { list: ParsedEntry[] } };
  /** A new id (UUID version 7). `random`: 20 hexadecimal digits. */
  uuid: { request: { now_ms: number; random: string }; answer: { id: string } };
}

export interface Swathbook {
  /** Called when a fresh module has taken the place of a broken one: open the notebook and add its entries again. */
  onRestart: ((swathbook: Swathbook) => void) | null;
  /** How often that has happened. */
  readonly epoch: number;

  callText(operation: string, request: string): { ok: boolean; json: string };
  /** @throws SwathbookError */
  call(operation: string, request: unknown): unknown;
  /** @throws SwathbookError, and then nothing has changed */
  book<Act extends keyof BookActs>(act: Act, request: BookActs[Act]["request"]): BookActs[Act]["answer"];
  /** Gives the core the sentences of another language (data/language/es.tsv); "language" in a request then asks for them. */
  loadLanguage(text: string): void;
  /**
   * Takes the operations from another module. For the first screen open swathbook_book.wasm, which holds the notebook
   * alone, and let swathbook.wasm come by this while it is shown.
   */
  loadOperations(source: ModuleSource): Promise<void>;
  /** Whether call and callText can be asked. */
  readonly hasOperations: boolean;
  /** The sheets of an order (reports/order.hpp) as one HTML element, with the classes of reports/html/paper.css. Needs swathbook_paper.wasm. @throws SwathbookError */
  sheets(order: unknown): string;
  /** BLAKE2b-256 as 64 hexadecimal digits. */
  digest(bytes: Uint8Array): string;
  memoryBytes(): number;
}

export type ModuleSource = string | URL | BufferSource | WebAssembly.Module;

/** Opens the module from a URL, bytes or an already compiled WebAssembly.Module. */
export function open(source: ModuleSource): Promise<Swathbook>;
