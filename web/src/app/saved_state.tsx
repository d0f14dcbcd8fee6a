// Always in sight: what is on this phone, and what has not left it yet. Leads to the settings.
import type { JSX } from "preact";
import { state, useNotebook } from "@/notebook/notebook";
import { syncState } from "@/notebook/sync";
import { count, say, useWords } from "@/words/words";
import { useChanging } from "./changing";
import { address } from "./route";

export function SavedState(): JSX.Element {
  useNotebook();
  const { sync, common } = useWords();
  const { entries } = state();
  const { phase, unsent } = useChanging(syncState);
  const waiting = unsent > 0 && (phase === "cut" || phase === "locked" || phase === "working");
  return (
    <a class="saved-state" href={address("phone")} aria-label={`${common.settings}. ${count(entries, sync.entriesHere)}`}>
      <span>{waiting ? say(sync.unsentShort, unsent) : count(entries, sync.entriesShort)}</span>
    </a>
  );
}
