// A tally for a gloved thumb: one big key, one to take a press back. Each press is on disk at once.
import type { JSX } from "preact";
import { useWords } from "@/words/words";

interface Props {
  count: number;
  label: string;
  press: string;
  onCount: (count: number) => void;
}

export function Tally({ count, label, press, onCount }: Props): JSX.Element {
  const { common } = useWords();
  return (
    <div class="tally">
      <p class="tally-count" role="status">
        <strong>{count}</strong> {label}
      </p>
      <button type="button" class="button go tally-press" onClick={() => onCount(count + 1)}>
        {press}
      </button>
      <button type="button" class="button tally-undo" disabled={count === 0} onClick={() => onCount(count - 1)}>
        {common.undo}
      </button>
    </div>
  );
}
