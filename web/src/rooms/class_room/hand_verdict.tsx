// How a hand answer stands: told kindly, by sign and word, with the rounding or shortcut that made it.
import type { JSX } from "preact";
import type { LearnerHand } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { Sign } from "@/parts/findings";
import { say, useWords } from "@/words/words";

export function HandVerdict({ name, hand }: { name: string; hand: LearnerHand }): JSX.Element {
  const { classRoom } = useWords();
  const verdict = hand.verdict ?? "slip";
  return (
    <div class={`hand ${verdict}`}>
      {verdict === "agrees" ? <RightSign /> : <Sign severity={verdict === "rounding" ? "note" : "advice"} />}
      <p>
        <strong>{say(classRoom.hand[verdict], name, show(hand.answer))}</strong> {verdict !== "agrees" && hand.text}
      </p>
    </div>
  );
}

export function RightSign(): JSX.Element {
  return (
    <svg class="right-sign" viewBox="0 0 24 24" width="28" height="28" fill="none" stroke="currentColor" stroke-width="4" aria-hidden="true">
      <path d="M3 13l6 6L21 5" />
    </svg>
  );
}
