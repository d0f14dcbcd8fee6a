// Always in sight: what is on this phone, and what has not left it yet. Leads to the settings.
import type { JSX } from "preact";
import { state, useNotebook } from "@/notebook/notebook";
import { count, useWords } from "@/words/words";
import { address } from "./route";

export function SavedState(): JSX.Element {
  useNotebook();
  const { sync, common } = useWords();
  const { entries } = state();
  return (
    <a class="saved-state" href={address("phone")} aria-label={`${common.settings}. ${count(entries, sync.entriesHere)}`}>
      <span>{count(entries, sync.entriesHere)}</span>
    </a>
  );
}
