// Beginning and ending a recorded pass. The entry of its beginning is written before the first position;
// the recording is forgotten only after the entry of its end is on disk.
import { keepBlob, newId } from "@/notebook/notebook";
import type { Draft } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { jsonLines, partsOf } from "@/positions/fixes";
import { begin, forget, halt } from "@/positions/recorder";
import { instant } from "@/words/words";
import { askSwept, openLoad, passesOfTrack, underWay } from "./day_data";

type Save = (drafts: Draft[]) => Promise<boolean>;

export async function beginPass(job: Thing<"job">, width: string, save: Save): Promise<void> {
  const id = newId();
  const load = openLoad(job.id);
  const at = instant();
  const drafts: Draft[] = [{ kind: "pass", subject: id, body: { job: job.id, load: load?.id, begun_at: at, width: width || undefined } }, ...underWay(job)];
  if (load && !load.fields.begun_at) drafts.push({ kind: "load", subject: load.id, body: { begun_at: at } });
  if (await save(drafts)) await begin("pass", job.id, id);
}

/** True when the pass is in the notebook. Throws WriteError when its fixes could not be kept; nothing is lost then. */
export async function endPass(job: Thing<"job">, width: string, save: Save): Promise<boolean> {
  const found = await halt();
  if (found === undefined) return false;
  const { head, fixes } = found;
  const swept = width === "" ? undefined : askSwept(job.fields, passesOfTrack(fixes, width))?.answer;
  const lines = partsOf(fixes).filter((part) => part.length > 1);
  const blob = fixes.length === 0 ? undefined : await keepBlob(jsonLines(fixes), "application/jsonl");
  const saved = await save([
    {
      kind: "pass",
      subject: head.id,
      body: {
        ended_at: instant(),
        width: width || undefined,
        fixes: blob === undefined ? undefined : { blob },
        track: lines.length === 0 ? undefined : { type: "MultiLineString", coordinates: lines.map((part) => part.map(({ lon, lat }) => [lon, lat])) },
        gaps: head.gaps,
        swept: swept,
      },
    },
  ]);
  if (saved) await forget();
  return saved;
}
