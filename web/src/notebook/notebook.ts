// The notebook on this phone. Every change is an entry sealed by the core; a write is acknowledged when
// the database says it is on disk, and only then shows on the screen.
import { SwathbookError, type BookActs } from "@wasm/swathbook.mjs";
import { changing, useChanging } from "@/app/changing";
import { settings } from "@/app/settings";
import { module } from "@/core/core";
import { isFull, withDatabase, type EntryRow } from "./database";
import type { Bodies, Kind, Thing } from "./things";

export interface Draft<K extends Kind = Kind> {
  kind: K;
  subject: string;
  /** Fields to set; null clears one. What is left out stays as it is. */
  body: { [Field in keyof Bodies[K]]?: Bodies[K][Field] | null };
}

/** Why something was not written. The form keeps what was typed. */
export class WriteError extends Error {
  constructor(
    readonly reason: "no_author" | "full" | "refused" | "failed",
    message: string,
  ) {
    super(message);
  }
}

/** Counts changes of the notebook; what shows a part of it looks again at each. */
const version = changing(0);
let device = "";
let epoch = 0;
let lastNumber = 0;
const cache = new Map<string, unknown>();
const otherTabs = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("swathbook notebook");

const now = () => Date.now();

// The core reads bodies as JSON and checks them itself; here they have the types of things.ts.
function act<Name extends keyof BookActs>(name: Name, request: object): BookActs[Name]["answer"] {
  return module().book(name, request as BookActs[Name]["request"]);
}

export function randomHex(bytes = 10): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** An id for a new thing. */
export function newId(): string {
  return (act("uuid", { now_ms: now(), random: randomHex() }) as { id: string }).id;
}

function changed(): void {
  cache.clear();
  version.set(version.now() + 1);
}

/** Reads everything on this phone into the core. Call once, after the core is loaded. */
export async function openNotebook(): Promise<void> {
  device = await thisDevice();
  await rebuild();
  otherTabs?.addEventListener("message", () => void readNew().then((added) => added && changed()));
}

async function thisDevice(): Promise<string> {
  return withDatabase(async (open) => {
    const step = open.transaction("facts", "readwrite");
    const known = await step.store.get("device");
    const id = typeof known?.value === "string" ? known.value : newId();
    if (known === undefined) await step.store.put({ key: "device", value: id });
    await step.done;
    return id;
  });
}

async function rebuild(): Promise<void> {
  act("open", { device, now_ms: now() });
  epoch = module().epoch;
  lastNumber = 0;
  await readNew();
  changed();
}

/** Takes rows that this page has not read yet into the core: of its own writes, or of another tab's. */
async function readNew(): Promise<boolean> {
  const rows = await withDatabase((open) => open.getAll("entries", IDBKeyRange.lowerBound(lastNumber, true)));
  if (rows.length === 0) return false;
  act("add", { entries: rows.map((row) => row.text).join(""), now_ms: now() });
  lastNumber = rows.at(-1)?.number ?? lastNumber;
  return true;
}

// A fault in the module restarts it empty; then the notebook is read into it again.
async function current(): Promise<void> {
  if (module().epoch !== epoch) await rebuild();
}

export interface Sealed {
  id: string;
  device: string;
  kind: string;
  subject: string;
  text: string;
}

/** One write at a time over all tabs: two tabs share this device's chain, which must not fork. */
async function alone<T>(work: () => Promise<T>): Promise<T> {
  if (navigator.locks === undefined) return work();
  return navigator.locks.request("swathbook notebook", work) as Promise<T>;
}

/**
 * Writes entries, all or none. Resolves when they are on disk.
 * @throws WriteError when nothing was written
 */
export async function write(drafts: Draft[]): Promise<void> {
  const author = settings.now().author.trim();
  if (author === "") throw new WriteError("no_author", "say who writes first");
  try {
    await alone(async () => {
      await current();
      await readNew();
      const sealed = act("seal", {
        drafts: drafts.map((draft) => ({ ...draft, body: clean(draft.body), author })),
        now_ms: now(),
        random: drafts.map(() => randomHex()),
      });
      const { list } = act("parse_entries", { entries: sealed.entries });
      await storeRows(list);
      await readNew();
    });
  } catch (error) {
    throw writeError(error);
  }
  changed();
  otherTabs?.postMessage("written");
  for (const tell of whenWritten) tell();
}

const whenWritten = new Set<() => void>();
/** Calls `tell` after each write of this page: the sync, and the question for lasting storage. */
export function onWritten(tell: () => void): void {
  whenWritten.add(tell);
}

const clean = (body: object): object =>
  Object.fromEntries(Object.entries(body).filter(([, value]) => value !== undefined));

function writeError(error: unknown): WriteError {
  if (error instanceof WriteError) return error;
  if (isFull(error)) return new WriteError("full", "the phone has no room left");
  if (error instanceof SwathbookError) return new WriteError("refused", error.detail);
  return new WriteError("failed", error instanceof Error ? error.message : String(error));
}

async function storeRows(list: Sealed[]): Promise<void> {
  await withDatabase(async (open) => {
    const step = open.transaction(["entries", "unsent"], "readwrite", { durability: "strict" });
    for (const { id, device: maker, kind, subject, text } of list) {
      const row: EntryRow = { id, device: maker, kind, subject, text };
      void step.objectStore("entries").add(row);
      void step.objectStore("unsent").put({ key: id, what: "entry" });
    }
    await step.done;
  });
}

export interface Merged {
  added: number;
  already: number;
  refused: Array<{ id: string; code: string; detail: string }>;
}

/**
 * Takes in entries made elsewhere, as travelling text. What is here already counts once; what fails its
 * own hash is refused and named; the others are kept.
 * @param acknowledged true when they come from the server, which then need not be sent them
 */
export async function merge(text: string, acknowledged = false): Promise<Merged> {
  const merged = await alone(async () => {
    await current();
    await readNew();
    const { list } = act("parse_entries", { entries: text });
    const { refused } = act("add", { entries: text, now_ms: now() });
    const bad = new Set(refused.map(({ id }) => id));
    const added = await storeForeign(list.filter(({ id }) => !bad.has(id)), acknowledged);
    return { added, already: list.length - added - refused.length, refused };
  });
  await rebuild(); // what could not be stored must not show
  otherTabs?.postMessage("written");
  return merged;
}

async function storeForeign(list: Sealed[], acknowledged: boolean): Promise<number> {
  return withDatabase(async (open) => {
    const step = open.transaction(["entries", "unsent"], "readwrite", { durability: "strict" });
    const entries = step.objectStore("entries");
    let added = 0;
    for (const { id, device: maker, kind, subject, text } of list) {
      if ((await entries.index("id").getKey(id)) !== undefined) continue;
      await entries.add({ id, device: maker, kind, subject, text });
      if (!acknowledged) await step.objectStore("unsent").put({ key: id, what: "entry" });
      added += 1;
    }
    await step.done;
    return added;
  });
}

/** Keeps bytes under their digest: a photo, a track. Resolves when they are on disk. */
export async function keepBlob(bytes: ArrayBuffer, type: string): Promise<string> {
  const digest = module().digest(new Uint8Array(bytes));
  try {
    await withDatabase(async (open) => {
      const step = open.transaction(["blobs", "unsent"], "readwrite", { durability: "strict" });
      void step.objectStore("blobs").put({ digest, type, bytes });
      void step.objectStore("unsent").put({ key: digest, what: "blob" });
      await step.done;
    });
  } catch (error) {
    throw writeError(error);
  }
  return digest;
}

/** Keeps bytes that came with a bundle or from the server. False when they were here already. */
export async function keepForeignBlob(digest: string, bytes: Uint8Array, type: string, acknowledged = false): Promise<boolean> {
  return withDatabase(async (open) => {
    const step = open.transaction(["blobs", "unsent"], "readwrite", { durability: "strict" });
    const isNew = (await step.objectStore("blobs").getKey(digest)) === undefined;
    if (isNew) {
      const own = bytes.slice().buffer as ArrayBuffer;
      await step.objectStore("blobs").put({ digest, type, bytes: own });
      if (!acknowledged) await step.objectStore("unsent").put({ key: digest, what: "blob" });
    }
    await step.done;
    return isNew;
  });
}

export async function blob(digest: string): Promise<{ type: string; bytes: ArrayBuffer } | undefined> {
  return withDatabase((open) => open.get("blobs", digest));
}

function remembered<T>(key: string, make: () => T): T {
  if (module().epoch !== epoch) void rebuild();
  if (!cache.has(key)) cache.set(key, make());
  return cache.get(key) as T;
}

/** All things of a kind, newest change first. */
export function things<K extends Kind>(kind: K): Array<Thing<K>> {
  return remembered(kind, () => {
    const list = act("things", { kind }).things as unknown as Array<Thing<K>>;
    return list.sort((a, b) => (a.changed < b.changed ? 1 : -1));
  });
}

export function thing<K extends Kind>(kind: K, id: string | undefined): Thing<K> | undefined {
  return id === undefined ? undefined : things(kind).find((found) => found.id === id);
}

export interface Conflict {
  kind: string;
  record: string;
  entry: string;
  field?: string;
  text: string;
}

export function conflicts(): Conflict[] {
  return remembered("conflicts", () => act("conflicts", {}).conflicts);
}

/** Two notebooks with the same digest are in the same state. */
export function state(): { digest: string; entries: number } {
  return remembered("state", () => act("state", {}));
}

/** Every entry on this phone as travelling text. */
export async function allEntries(): Promise<string> {
  const rows = await withDatabase((open) => open.getAll("entries"));
  return rows.map((row) => row.text).join("");
}

/** Every entry about one thing, oldest first. */
export async function history(kind: Kind, subject: string) {
  const rows = await withDatabase((open) => open.getAllFromIndex("entries", "subject", subject));
  const entries = rows.map((row) => row.text).join("");
  return act("history", { entries, kind, subject }).entries;
}

/** Problems of the chains: empty when every entry is where its device put it. */
export async function chainProblems(): Promise<Array<{ entry: string; fault: string; text: string }>> {
  return act("check", { entries: await allEntries() }).problems;
}

export const deviceId = (): string => device;
export const useNotebook = (): number => useChanging(version);

/** All things of a kind, with a redraw when the notebook changes. */
export function useThings<K extends Kind>(kind: K): Array<Thing<K>> {
  useNotebook();
  return things(kind);
}

export function useThing<K extends Kind>(kind: K, id: string | undefined): Thing<K> | undefined {
  useNotebook();
  return thing(kind, id);
}

/** For the sync: tells the pages that the database got new entries. */
export async function refresh(): Promise<void> {
  if (await readNew()) changed();
}
