// With `swathbook serve` behind the page, entries and attachments travel both ways. Without one, nothing
// is missing: the notebook is whole on this phone.
//
// Push and pull can stop at any point and begin again: the server keeps each entry once, this phone forgets
// "unsent" only for ids the server named as stored, and the pull cursor moves only over entries that are on
// disk here.
import { changing } from "@/app/changing";
import { fact, setFact, withDatabase } from "./database";
import { blob, keepForeignBlob, merge, onWritten, things, type Merged } from "./notebook";

export type SyncPhase =
  | "unknown" // not looked yet
  | "alone" // no server behind this page: a static host, or the app opened with no network
  | "working"
  | "together" // all sent, all fetched
  | "cut" // there was a server; it does not answer now
  | "locked"; // the server answers but does not know this page's token

export interface SyncState {
  phase: SyncPhase;
  unsent: number;
  refused: Merged["refused"];
  last?: string;
}

export const syncState = changing<SyncState>({ phase: "unknown", unsent: 0, refused: [] });

const tokenKey = "swathbook token";
const batchEntries = 500;
const batchBytes = 4_000_000;

class Locked extends Error {}
class Cut extends Error {}

async function ask(path: string, init: RequestInit = {}): Promise<Response> {
  const headers = { "X-Swathbook-Token": sessionStorage.getItem(tokenKey) ?? "", ...(init.headers as Record<string, string>) };
  const answer = await fetch(`./api/${path}`, { ...init, headers, cache: "no-store" }).catch(() => {
    throw new Cut();
  });
  if (answer.status === 401 || answer.status === 403) throw new Locked();
  if (!answer.ok && answer.status !== 404 && answer.status !== 409) throw new Cut(`${answer.status}`);
  return answer;
}

// A static host answers with a page or nothing; a server without a notebook has nothing to sync with.
async function isServed(): Promise<boolean> {
  const answer = await fetch("./api/health", { cache: "no-store" }).catch(() => undefined);
  if (answer?.ok !== true || !(answer.headers.get("content-type") ?? "").includes("json")) return false;
  return ((await answer.json()) as { notebook?: boolean }).notebook === true;
}

async function countUnsent(): Promise<number> {
  return withDatabase((open) => open.count("unsent"));
}

async function push(): Promise<Merged["refused"]> {
  const refused: Merged["refused"] = [];
  const skipped = new Set<string>();
  for (;;) {
    const rows = await nextUnsent(skipped);
    if (rows.length === 0) return refused;
    const answer = await ask("sync/push", { method: "POST", body: rows.map((row) => row.text).join(""), headers: { "Content-Type": "text/plain" } });
    const { stored, refused: notStored } = (await answer.json()) as { stored: string[]; refused: Merged["refused"] };
    await acknowledge(stored);
    refused.push(...notStored);
    const named = new Set([...stored, ...notStored.map(({ id }) => id)]);
    for (const { id } of rows) if (!stored.includes(id)) skipped.add(id);
    if (!rows.some(({ id }) => named.has(id))) throw new Cut("the answer named none of the entries");
  }
}

async function nextUnsent(skipped: Set<string>): Promise<Array<{ id: string; text: string }>> {
  return withDatabase(async (open) => {
    const step = open.transaction(["unsent", "entries"]);
    const byId = step.objectStore("entries").index("id");
    const rows: Array<{ id: string; text: string; number?: number }> = [];
    let bytes = 0;
    for (const { key, what } of await step.objectStore("unsent").getAll()) {
      if (what !== "entry" || skipped.has(key)) continue;
      const row = await byId.get(key);
      if (row === undefined) continue;
      rows.push(row);
      bytes += row.text.length;
      if (rows.length >= batchEntries || bytes >= batchBytes) break;
    }
    return rows.sort((a, b) => (a.number ?? 0) - (b.number ?? 0));
  });
}

async function acknowledge(keys: string[]): Promise<void> {
  await withDatabase(async (open) => {
    const step = open.transaction("unsent", "readwrite");
    for (const key of keys) void step.store.delete(key);
    await step.done;
  });
}

async function pushBlobs(): Promise<void> {
  const unsent = await withDatabase((open) => open.getAll("unsent"));
  for (const { key, what } of unsent) {
    if (what !== "blob") continue;
    const there = await ask(`sync/blob/${key}`, { method: "HEAD" });
    const kept = there.status === 404 ? await blob(key) : undefined;
    if (kept) await ask(`sync/blob/${key}`, { method: "PUT", body: kept.bytes, headers: { "Content-Type": "application/octet-stream" } });
    await acknowledge([key]);
  }
}

interface Pulled {
  cursor: number;
  more: boolean;
  entries: string;
}

async function pull(): Promise<void> {
  const { notebook } = (await (await ask("sync/notebook")).json()) as { notebook: string };
  const key = `cursor of ${notebook}`;
  for (;;) {
    const after = (await fact<number>(key)) ?? 0;
    const answer = await ask(`sync/pull?after=${after}&limit=${batchEntries}`);
    if (answer.status === 409) {
      // The notebook is shorter than it was (restored from a backup): fetch all of it; entries count once.
      await setFact(key, 0);
      continue;
    }
    const pulled = (await answer.json()) as Pulled;
    if (pulled.entries !== "") {
      await merge(pulled.entries, true);
    }
    if (pulled.cursor !== after) await setFact(key, pulled.cursor);
    if (!pulled.more || pulled.cursor === after) return;
  }
}

/** Photos and tracks that entries name and this phone has not got. */
async function pullBlobs(): Promise<void> {
  const wanted = [
    ...things("attachment").map(({ fields }) => ({ digest: fields.blob, type: fields.type })),
    ...things("pass").map(({ fields }) => ({ digest: fields.fixes?.blob, type: "application/x-ndjson" })),
  ];
  for (const { digest, type } of wanted) {
    if (digest === undefined || (await blob(digest)) !== undefined) continue;
    const answer = await ask(`sync/blob/${digest}`);
    if (answer.ok) await keepForeignBlob(digest, new Uint8Array(await answer.arrayBuffer()), type ?? "", true);
  }
}

async function once(): Promise<void> {
  const before = syncState.now();
  if (!(await isServed())) {
    const known = before.last !== undefined;
    syncState.set({ ...before, phase: known ? "cut" : "alone", unsent: await countUnsent() });
    return;
  }
  syncState.set({ ...before, phase: "working" });
  try {
    const refused = await push();
    await pushBlobs();
    await pull();
    await pullBlobs();
    const unsent = await countUnsent();
    syncState.set({ phase: "together", unsent, refused, last: new Date().toISOString() });
  } catch (error) {
    if (!(error instanceof Cut || error instanceof Locked)) console.error(error);
    syncState.set({ ...before, phase: error instanceof Locked ? "locked" : "cut", unsent: await countUnsent() });
  }
}

let running: Promise<void> | undefined;
let again = false;

/** Sends and fetches; asked while running, it runs once more afterwards. One tab at a time. */
export function syncNow(): Promise<void> {
  if (running) {
    again = true;
    return running;
  }
  const work = navigator.locks ? navigator.locks.request("swathbook sync", once).then(() => undefined) : once();
  running = work.finally(() => {
    running = undefined;
    performance.mark("swathbook synced");
    if (again) {
      again = false;
      void syncNow();
    }
  });
  return running;
}

/** The token of this run of the server comes in the address once; it is kept for this tab alone. */
export function rememberToken(): void {
  const found = /[#&]token=([^&]+)/.exec(location.hash);
  if (!found) return;
  sessionStorage.setItem(tokenKey, found[1] ?? "");
  history.replaceState(null, "", location.pathname + location.search);
}

/** No phone syncs in the background everywhere: so on opening, coming back, going online, and after a save. */
export function startSync(): void {
  const soon = () => void syncNow();
  addEventListener("online", soon);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && soon());
  let timer: ReturnType<typeof setTimeout> | undefined;
  onWritten(() => {
    // Said at once: until it is sent, nobody may read that both have the same.
    const state = syncState.now();
    syncState.set({ ...state, unsent: state.unsent + 1 });
    clearTimeout(timer);
    timer = setTimeout(soon, 1500);
  });
  soon();
}
