// Where a value is from, in words: "From the job Heron Flat".
import { thing } from "@/notebook/notebook";
import type { Kind } from "@/notebook/things";
import { say, wordsNow } from "@/words/words";

const kinds = ["job", "stand", "landowner", "operator", "product_card", "load", "pass", "sprayer", "calibration", "reading", "attachment"] as const;
type SourceKind = (typeof kinds)[number];

export function sourceWords(from: string | undefined): string | undefined {
  const { records } = wordsNow();
  if (from === undefined) return records.sources.typed;
  if (from === "notebook") return records.sources.notebook;
  if (from === "today") return records.sources.today;
  const [kind = "", id = ""] = from.split("/");
  if (kind === "plan") return say(records.sources.plan, nameOf("job", id));
  if (!kinds.includes(kind as SourceKind)) return undefined;
  return say(records.sources[kind as SourceKind], nameOf(kind as SourceKind, id));
}

function nameOf(kind: Kind, id: string): string {
  const fields = thing(kind, id)?.fields as { name?: string; number?: number; begun_at?: string } | undefined;
  if (fields === undefined) return "";
  if (fields.name !== undefined) return fields.name;
  return fields.number === undefined ? "" : String(fields.number);
}
