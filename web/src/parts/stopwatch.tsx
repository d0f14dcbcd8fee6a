// A stopwatch as one big button. The instant it began is the caller's to keep, so that a reload does not
// stop the clock.
import type { JSX } from "preact";
import { useAwake } from "./awake";
import { useNow } from "./clock";

interface Props {
  /** The instant it began (milliseconds since 1970), or null when it stands. */
  running: number | null;
  onStart: (at: number) => void;
  /** Seconds with one decimal, as a person's watch shows them. */
  onStop: (seconds: string) => void;
  start: string;
  stop: string;
  /** What is being timed: "Pass 2". */
  what: string;
}

export function Stopwatch({ running, onStart, onStop, start, stop, what }: Props): JSX.Element {
  const isOn = running !== null;
  useAwake(isOn);
  const now = useNow(isOn);
  const shown = isOn ? seconds(now - running) : "0.0";
  const press = () => (isOn ? onStop(seconds(Date.now() - running)) : onStart(Date.now()));
  return (
    <button type="button" class={isOn ? "watch on" : "watch"} onClick={press}>
      <span class="watch-what">{what}</span>
      <span class="watch-time">{shown} s</span>
      <span class="watch-act">{isOn ? stop : start}</span>
    </button>
  );
}

const seconds = (milliseconds: number): string => (Math.max(0, milliseconds) / 1000).toFixed(1);
