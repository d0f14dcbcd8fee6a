// The fixes of a walk or a pass on their way to the disk: in small batches as they come, so that a crash
// or a dead battery loses some seconds and no more.
import { withDatabase } from "@/notebook/database";

/** One position as the phone gave it. */
export interface Fix {
  /** Since the recording began. */
  t_seconds: number;
  lat: number;
  lon: number;
  /** The spray was on; for an edge: the walk was not paused. */
  on: boolean;
  /** What the phone says it is good to, metres. */
  accuracy_m: number;
  /** Counts up after each gap: positions of different parts are never joined as if somebody had been between. */
  part: number;
}

export type GapReason = "hidden" | "no_position" | "closed" | "paused";

/** A stretch with no positions. Never bridged silently. */
export interface Gap {
  from_seconds: number;
  to_seconds: number;
  why: GapReason;
}

/** What a recording is, apart from its fixes. */
export interface TrackHead {
  id: string;
  use: "edge" | "pass";
  /** The job of a pass; empty for an edge. */
  subject: string;
  begun: number;
  on: boolean;
  gaps: Gap[];
}

// They live beside the half-filled forms: like those they are the phone's own, and go once the entry is made.
const headKey = "track/";
const chunkKey = (id: string, chunk: number) => `fixes/${id}/${String(chunk).padStart(6, "0")}`;
const chunksOf = (id: string) => IDBKeyRange.bound(`fixes/${id}/`, `fixes/${id}/\uffff`);

/** Writes the head and, when there are any, new fixes as a chunk, in one step. Resolves when they are on disk. */
export async function keepTrack(head: TrackHead, fixes: Fix[], chunk: number): Promise<void> {
  await withDatabase(async (open) => {
    const step = open.transaction("forms", "readwrite", { durability: "strict" });
    const at = Date.now();
    void step.store.put({ key: headKey + head.id, value: head, at });
    if (fixes.length > 0) void step.store.put({ key: chunkKey(head.id, chunk), value: fixes, at });
    await step.done;
  });
}

export interface FoundTrack {
  head: TrackHead;
  fixes: Fix[];
  /** The number of the chunk to write next. */
  chunk: number;
}

/** The recording that was not ended; undefined when there is none. */
export async function unfinishedTrack(): Promise<FoundTrack | undefined> {
  return withDatabase(async (open) => {
    const [row] = await open.getAll("forms", IDBKeyRange.bound(headKey, `${headKey}\uffff`), 1);
    if (row === undefined) return undefined;
    const head = row.value as TrackHead;
    const chunks = await open.getAll("forms", chunksOf(head.id));
    return { head, fixes: chunks.flatMap((chunk) => chunk.value as Fix[]), chunk: chunks.length };
  });
}

/** Forgets a recording: its entry is on disk, or the person threw it away. */
export async function dropTrack(id: string): Promise<void> {
  await withDatabase(async (open) => {
    const step = open.transaction("forms", "readwrite", { durability: "strict" });
    void step.store.delete(headKey + id);
    void step.store.delete(chunksOf(id));
    await step.done;
  });
}

/** The fixes as a file: one JSON object a line. */
export function jsonLines(fixes: Fix[]): ArrayBuffer {
  return new TextEncoder().encode(fixes.map((fix) => JSON.stringify(fix)).join("\n") + "\n").buffer;
}

/** Runs of fixes with nothing missing between them. */
export function partsOf(fixes: Fix[]): Fix[][] {
  const parts: Fix[][] = [];
  for (const fix of fixes) {
    const last = parts.at(-1);
    if (last?.[0]?.part === fix.part) last.push(fix);
    else parts.push([fix]);
  }
  return parts;
}
