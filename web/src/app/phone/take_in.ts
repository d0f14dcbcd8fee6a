// Takes a file in and says what came of it.
import { BundleError, takeBundle } from "@/notebook/bundle";
import { isFull } from "@/notebook/database";
import { say, wordsNow } from "@/words/words";

export async function takeIn(file: Blob): Promise<string[]> {
  const { sync, common } = wordsNow();
  try {
    const { added, already, blobs, refused } = await takeBundle(file);
    const done = say(sync.bringDone, added, already, blobs);
    const first = refused[0];
    if (first === undefined) return [done];
    const words = refused.length === 1 ? sync.bringRefused.one : sync.bringRefused.many;
    return [done, say(words, refused.length, first.detail)];
  } catch (error) {
    if (isFull(error)) return [common.full];
    if (!(error instanceof BundleError)) return [say(sync.bringFailed, error instanceof Error ? error.message : String(error))];
    const words = { not_a_bundle: sync.bringNotBundle, damaged: sync.bringDamaged, newer: sync.bringNewer }[error.reason];
    return [say(words, error.part)];
  }
}
