// Open, closed, late: a word and a shape of its own, never colour alone.
import type { JSX } from "preact";
import { useWords } from "@/words/words";
import type { Standing } from "./standing";

const shapes = {
  open: "M4 4h16v16H4z",
  closed: "M6 11V8a6 6 0 0 1 12 0v3h2v11H4V11zm3 0h6V8a3 3 0 0 0-6 0z",
  late: "M12 2l11 20H1z",
};

export function StateMark({ standing: { closed, late } }: { standing: Pick<Standing, "closed" | "late"> }): JSX.Element {
  const { records } = useWords();
  return (
    <span class="state-marks">
      <span class={closed ? "state-mark closed" : "state-mark open"}>
        <Shape of={closed ? "closed" : "open"} />
        {closed ? records.states.closed : records.states.open}
      </span>
      {late && (
        <span class="state-mark late">
          <Shape of="late" />
          {records.states.late}
        </span>
      )}
    </span>
  );
}

function Shape({ of }: { of: keyof typeof shapes }): JSX.Element {
  return (
    <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
      <path d={shapes[of]} fill={of === "open" ? "none" : "currentColor"} stroke="currentColor" stroke-width="2.5" fill-rule="evenodd" />
    </svg>
  );
}
