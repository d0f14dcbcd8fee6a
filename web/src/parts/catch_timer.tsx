// Counts a catch down: get ready, catch, stop. Big on the screen, with beeps and a buzz beside it. It runs by
// the clock, so that a reload in the middle does no harm.
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { say, useWords } from "@/words/words";
import { useAwake } from "./awake";
import { useNow } from "./clock";
import { signal, wakeSound } from "./signals";

export interface Countdown {
  /** The instant of the press. */
  at: number;
  seconds: number;
}

const readySeconds = 5;
type Phase = "still" | "ready" | "now" | "over";

interface Props {
  seconds: number | undefined;
  countdown: Countdown | null;
  onCountdown: (countdown: Countdown | null) => void;
}

export function CatchTimer({ seconds, countdown, onCountdown }: Props): JSX.Element {
  const words = useWords().sprayers.calibrate.catch;
  const now = useNow(countdown !== null);
  const { phase, left, part } = stateAt(countdown, now);
  useAwake(phase === "ready" || phase === "now");
  useSignals(phase, Math.ceil(left));
  const begin = () => {
    if (seconds === undefined) return;
    wakeSound();
    onCountdown({ at: Date.now(), seconds });
  };
  if (countdown === null) {
    return (
      <button type="button" class="watch" disabled={seconds === undefined} onClick={begin}>
        <span class="watch-what">{words.timer}</span>
        <span class="watch-time">{seconds === undefined ? "–" : seconds.toFixed(1)} s</span>
        <span class="watch-act">{words.startTimer}</span>
      </button>
    );
  }
  const said = { still: words.startTimer, ready: words.ready, now: words.now, over: words.over }[phase];
  return (
    <div class={`countdown ${phase}`}>
      <p class="countdown-word" role="status">
        {said}
      </p>
      {phase !== "over" && <p class="countdown-number">{phase === "ready" ? Math.ceil(left) : left.toFixed(1)}</p>}
      <progress max={1} value={part} aria-label={say(words.ownTimer, countdown.seconds.toFixed(1))} />
      {phase === "over" ? (
        <button type="button" class="button main wide" onClick={begin}>
          {words.again}
        </button>
      ) : (
        <button type="button" class="button stop wide" onClick={() => onCountdown(null)}>
          {words.stopTimer}
        </button>
      )}
    </div>
  );
}

function stateAt(countdown: Countdown | null, now: number): { phase: Phase; left: number; part: number } {
  if (countdown === null) return { phase: "still", left: 0, part: 0 };
  const since = Math.max(0, (now - countdown.at) / 1000);
  if (since < readySeconds) return { phase: "ready", left: readySeconds - since, part: 0 };
  const caught = since - readySeconds;
  if (caught < countdown.seconds) return { phase: "now", left: countdown.seconds - caught, part: caught / countdown.seconds };
  return { phase: "over", left: 0, part: 1 };
}

// Each signal once, when its moment comes while the page looks; not again after a reload.
function useSignals(phase: Phase, left: number): void {
  const before = useRef<Phase | undefined>(undefined);
  useEffect(() => {
    const from = before.current;
    before.current = phase;
    if (from === undefined) return;
    if (phase === "now" && from === "ready") signal.begin();
    if (phase === "over" && from === "now") signal.end();
  }, [phase]);
  useEffect(() => {
    if ((phase === "ready" && left > 0) || (phase === "now" && left <= 3 && left > 0)) signal.tick();
  }, [phase, left]);
}
