// What the phone says of its position, in words: good, fair, poor, none, and why; and whether it is kept.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useChanging } from "@/app/changing";
import { say, useWords } from "@/words/words";
import { gapSeconds, type Recording } from "./recorder";
import { sayAloud } from "./spoken";
import { awake } from "./wake";

/** Draws again every second. */
export function useSeconds(): number {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

export function PositionState({ of }: { of: Recording }): JSX.Element {
  const { fieldDay, ground } = useWords();
  const now = useSeconds();
  const isAwake = useChanging(awake);
  const accuracy = of.fixes.at(-1)?.accuracy_m;
  const silent = of.running && of.last !== undefined ? Math.floor((now - of.last) / 1000) : 0;
  const isSilent = silent > gapSeconds;
  useEffect(() => {
    if (isSilent) sayAloud(fieldDay.spokenGap);
  }, [isSilent]);
  const word = accuracy === undefined ? ground.waiting : accuracy <= 5 ? ground.walkGood : accuracy <= 12 ? ground.walkFair : ground.walkBad;
  return (
    <div class="position" role="status">
      {of.trouble && <p class="refusal">{fieldDay.positionTrouble[of.trouble]}</p>}
      {of.unkept && <p class="refusal">{of.unkept === "full" ? fieldDay.unkeptFull : fieldDay.unkept}</p>}
      {of.running && !of.trouble && (
        <p class={accuracy !== undefined && accuracy > 12 ? "position-line poor" : "position-line"}>
          <strong>{word}</strong> {accuracy !== undefined && say(ground.accuracy, Math.round(accuracy))}
        </p>
      )}
      {isSilent && <p class="refusal">{say(fieldDay.silent, silent)}</p>}
      {of.running && !isAwake && <p class="hint">{fieldDay.notAwake}</p>}
    </div>
  );
}
