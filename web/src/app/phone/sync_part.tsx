// The state of the sync in one sentence, and a button: no phone can be trusted to do it in the background.
import type { JSX } from "preact";
import { useChanging } from "@/app/changing";
import { syncNow, syncState } from "@/notebook/sync";
import { Section } from "@/parts/list";
import { ago, count, say, useWords } from "@/words/words";

export function SyncPart(): JSX.Element {
  const { sync } = useWords();
  const { phase, unsent, refused, last } = useChanging(syncState);
  const sentence = {
    unknown: sync.syncUnknown,
    alone: sync.syncAlone,
    working: sync.syncWorking,
    together: unsent > 0 ? "" : say(sync.syncTogether, last ? ago(last) : ""),
    cut: sync.syncCut,
    locked: sync.syncLocked,
  }[phase];
  const first = refused[0];
  const refusedWords = refused.length === 1 ? sync.syncRefused.one : sync.syncRefused.many;
  return (
    <Section title={sync.syncTitle}>
      <p role="status">
        {sentence} {phase !== "alone" && unsent > 0 && count(unsent, sync.syncUnsent)}
      </p>
      {first && <p class="refusal">{say(refusedWords, refused.length, first.detail)}</p>}
      {phase !== "alone" && (
        <button type="button" class="button wide" disabled={phase === "working"} onClick={() => void syncNow()}>
          {sync.syncNow}
        </button>
      )}
    </Section>
  );
}
