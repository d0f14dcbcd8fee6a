// How firmly the notebook sits on this phone, said in plain words.
import type { JSX } from "preact";
import { useChanging } from "@/app/changing";
import { canBeOffline, readyOffline } from "@/app/offline";
import { askToKeep, lasting } from "@/notebook/lasting";
import { state, useNotebook } from "@/notebook/notebook";
import { Section } from "@/parts/list";
import { count, say, useWords } from "@/words/words";

/** Bytes in a unit a person knows. */
function room(bytes: number): string {
  const units = ["kB", "MB", "GB", "TB"];
  let amount = bytes / 1000;
  let at = 0;
  while (amount >= 1000 && at < units.length - 1) {
    amount /= 1000;
    at += 1;
  }
  return `${amount >= 10 ? Math.round(amount) : Math.round(amount * 10) / 10} ${units[at]}`;
}

export function KeptPart(): JSX.Element {
  useNotebook();
  const { sync } = useWords();
  const { promised, used, room: allowed } = useChanging(lasting);
  const ready = useChanging(readyOffline);
  const offlineWords = !canBeOffline ? sync.offlineCannot : ready ? sync.offlineReady : sync.offlineNotYet;
  return (
    <Section title={sync.keptTitle}>
      <p>
        <strong>{count(state().entries, sync.entriesHere)}.</strong> {used !== undefined && allowed !== undefined && say(sync.keptRoom, room(used), room(allowed))}
      </p>
      <p>{promised ? sync.keptPromised : sync.keptNotPromised}</p>
      {!promised && (
        <button type="button" class="button wide" onClick={() => void askToKeep()}>
          {sync.keptAsk}
        </button>
      )}
      <p>{offlineWords}</p>
      <p class="hint">{sync.install}</p>
    </Section>
  );
}
