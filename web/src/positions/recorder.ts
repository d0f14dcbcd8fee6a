// One recording at a time, of a pass or of an edge. It runs beside the screens: changing rooms does not
// stop it, and what was recorded before a reload is found again.
import { changing, useChanging } from "@/app/changing";
import { isFull } from "@/notebook/database";
import { newId } from "@/notebook/notebook";
import { dropTrack, keepTrack, unfinishedTrack, type Fix, type GapReason, type TrackHead } from "./fixes";
import { keepAwake } from "./wake";

export interface Recording {
  head: TrackHead;
  fixes: Fix[];
  /** Positions are being taken; false after a long break, until the person says so. */
  running: boolean;
  /** Why no position comes: the phone has none to give, may not, or cannot now. */
  trouble?: "absent" | "refused" | "unavailable";
  /** Why fixes do not reach the disk. */
  unkept?: "full" | "failed";
  /** When the newest fix came. */
  last?: number;
}

/** Seconds without a position that count as a gap. */
export const gapSeconds = 10;
const batchMilliseconds = 3_000;
/** After a longer break than this nobody knows that the spray is still on: the person is asked. */
const longBreakSeconds = 300;

export const recording = changing<Recording | undefined>(undefined);
export const useRecording = (): Recording | undefined => useChanging(recording);

let watch: number | undefined;
let batch: Fix[] = [];
let chunk = 0;
let beat: ReturnType<typeof setInterval> | undefined;
let reason: GapReason = "no_position";
let writing: Promise<void> = Promise.resolve();

const change = (part: Partial<Recording>): void => {
  const now = recording.now();
  if (now !== undefined) recording.set({ ...now, ...part });
};

const secondsSince = (head: TrackHead, at: number): number => Math.round((at - head.begun) / 100) / 10;

/** Reads what was not ended before the page closed. Call once, at start. */
export async function openRecorder(): Promise<void> {
  const found = await unfinishedTrack();
  if (found === undefined || recording.now() !== undefined) return;
  const { head, fixes } = found;
  chunk = found.chunk;
  const last = head.begun + (fixes.at(-1)?.t_seconds ?? 0) * 1000;
  reason = "closed";
  const short = Date.now() - last < longBreakSeconds * 1000;
  recording.set({ head, fixes, running: false, last: fixes.length > 0 ? last : undefined });
  if (short) go();
}

/** Begins a recording. Resolves when its beginning is on disk; throws when that fails. */
export async function begin(use: TrackHead["use"], subject: string, id = newId()): Promise<void> {
  const head: TrackHead = { id, use, subject, begun: Date.now(), on: true, gaps: [] };
  await keepTrack(head, [], 0);
  chunk = 0;
  reason = "no_position";
  recording.set({ head, fixes: [], running: true });
  go();
}

/** Takes positions (again). */
export function go(): void {
  change({ running: true, trouble: undefined });
  keepAwake(true);
  beat ??= setInterval(() => void keepBatch(), batchMilliseconds);
  if (!("geolocation" in navigator)) return change({ trouble: "absent" });
  if (watch !== undefined) navigator.geolocation.clearWatch(watch);
  watch = navigator.geolocation.watchPosition(take, refuse, { enableHighAccuracy: true, maximumAge: 0, timeout: 20_000 });
}

function refuse(error: GeolocationPositionError): void {
  change({ trouble: error.code === error.PERMISSION_DENIED ? "refused" : "unavailable" });
}

// Some phones date a position wrongly; then the moment it came counts.
function timeOf(position: GeolocationPosition): number {
  const now = Date.now();
  return Math.abs(now - position.timestamp) < 60_000 ? position.timestamp : now;
}

function take(position: GeolocationPosition): void {
  const now = recording.now();
  if (now === undefined || !now.running) return;
  const { latitude, longitude, accuracy } = position.coords;
  const at = Math.max(timeOf(position), now.last ?? now.head.begun);
  const t_seconds = secondsSince(now.head, at);
  const before = now.fixes.at(-1);
  const { head, part } = afterGap(now.head, before, t_seconds);
  reason = "no_position";
  const fix: Fix = { t_seconds, lat: latitude, lon: longitude, on: head.on, accuracy_m: Math.round(accuracy * 10) / 10, part };
  batch.push(fix);
  recording.set({ ...now, head, fixes: [...now.fixes, fix], trouble: undefined, last: at });
}

// A longer silence, a hidden page or a pause begins a new part and is written down as a gap.
function afterGap(head: TrackHead, before: Fix | undefined, t_seconds: number): { head: TrackHead; part: number } {
  if (before === undefined) return { head, part: 0 };
  const missing = t_seconds - before.t_seconds;
  if (missing <= gapSeconds && reason !== "paused" && reason !== "closed") return { head, part: before.part };
  const gaps = [...head.gaps, { from_seconds: before.t_seconds, to_seconds: t_seconds, why: reason }];
  return { head: { ...head, gaps }, part: before.part + 1 };
}

// One write after the other, so that an older head never lands on a newer one.
function inTurn(work: () => Promise<void>): Promise<void> {
  writing = writing.then(work).catch((error: unknown) => change({ unkept: isFull(error) ? "full" : "failed" }));
  return writing;
}

/** Writes what came since the last time. What cannot be written stays in memory and is tried again. */
function keepBatch(): Promise<void> {
  return inTurn(async () => {
    const now = recording.now();
    if (now === undefined || batch.length === 0) return;
    const these = batch;
    batch = [];
    try {
      await keepTrack(now.head, these, chunk);
    } catch (error) {
      batch = [...these, ...batch];
      throw error;
    }
    chunk += 1;
    if (now.unkept !== undefined) change({ unkept: undefined });
  });
}

/** Spray on or off. Resolves when it is on disk. */
export async function setOn(on: boolean): Promise<void> {
  await keepBatch();
  const now = recording.now();
  if (now === undefined) return;
  const head = { ...now.head, on };
  recording.set({ ...now, head });
  await inTurn(() => keepTrack(recording.now()?.head ?? head, [], chunk));
}

/** Stops taking positions for a while; going on begins a new part. */
export async function pause(): Promise<void> {
  stopWatch();
  reason = "paused";
  change({ running: false });
  await keepBatch();
}

function stopWatch(): void {
  if (watch !== undefined) navigator.geolocation.clearWatch(watch);
  watch = undefined;
  keepAwake(false);
}

/** Takes back the newest positions of an edge. */
export async function takeBack(count: number): Promise<void> {
  await keepBatch();
  await inTurn(async () => {
    const now = recording.now();
    if (now === undefined) return;
    const head = { ...now.head, id: newId() };
    const fixes = now.fixes.slice(0, -count);
    await keepTrack(head, fixes, 0); // under a new id: a crash between the two leaves one of them whole
    chunk = 1;
    batch = [];
    recording.set({ ...now, head, fixes });
    await dropTrack(now.head.id);
  });
}

/** Everything that was recorded, on disk as far as the disk took it. Positions are no longer taken. */
export async function halt(): Promise<Recording | undefined> {
  stopWatch();
  change({ running: false });
  await keepBatch();
  return recording.now();
}

/** Forgets the recording, once its entry is on disk or when it is thrown away. */
export async function forget(): Promise<void> {
  const now = recording.now();
  stopWatch();
  clearInterval(beat);
  beat = undefined;
  batch = [];
  recording.set(undefined);
  if (now !== undefined) await dropTrack(now.head.id).catch(() => undefined);
}

document.addEventListener("visibilitychange", () => {
  if (recording.now() === undefined) return;
  if (document.visibilityState === "hidden") {
    reason = reason === "no_position" ? "hidden" : reason;
    void keepBatch();
  }
});
addEventListener("pagehide", () => void keepBatch());
