// Go or stop: one giant word, told by its shape as well; then every check with whose limit it is.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { CheckVerdict, WindowRow } from "@/core/operations.gen";
import { WorkingButton } from "@/parts/answer";
import { Findings, RefusalNote } from "@/parts/findings";
import { say, useWords } from "@/words/words";

export type Verdict = "go" | "stop" | "not_known" | "old" | "none";

/** What the board shows: a reading past its time is no verdict any more. */
export function verdictOf(asked: Asked<"spray-window"> | undefined): Verdict {
  const answer = asked?.answer;
  if (asked === undefined) return "none";
  if (answer === undefined) return "old";
  const age = answer.checks?.find(({ what }) => what === "reading_age");
  if (age !== undefined && age.verdict !== "go") return "old";
  return answer.verdict ?? "not_known";
}

// A ring to drive through, an octagon, a triangle: told apart without colour.
const shapes: Record<Verdict, string> = {
  go: "M32 4a28 28 0 1 0 .01 0z",
  stop: "M21 4h22l17 17v22L43 60H21L4 43V21z",
  not_known: "M32 4l29 54H3z",
  old: "M32 4l29 54H3z",
  none: "M5 12h54v40H5z",
};
const marks: Record<Verdict, string> = { go: "M19 33l9 10 18-22", stop: "M20 32h24", not_known: "M32 24v16M32 48v1", old: "M32 24v16M32 48v1", none: "M22 32h20" };

export function Board({ verdict, lines }: { verdict: Verdict; lines: string[] }): JSX.Element {
  const { fieldDay } = useWords();
  return (
    <div class={`board ${verdict}`} role="status">
      <svg class="board-shape" viewBox="0 0 64 64" aria-hidden="true">
        <path class="board-form" d={shapes[verdict]} />
        <path class="board-mark" d={marks[verdict]} />
      </svg>
      <div class="board-words">
        <strong>{fieldDay.verdict[verdict]}</strong>
        {lines.filter(Boolean).map((line, index) => (
          <span key={index}>{degrees(line)}</span>
        ))}
      </div>
    </div>
  );
}

// The core writes plain letters.
const degrees = (text: string): string => text.replace(/\bdeg([FC])\b/g, "°$1");

const order: Record<CheckVerdict, number> = { stop: 0, not_known: 1, go: 2, not_entered: 3 };

/** Every check in words; then what nobody entered. */
export function Checks({ of }: { of: Asked<"spray-window"> }): JSX.Element {
  const { fieldDay } = useWords();
  const { answer } = of;
  if (answer === undefined) return <RefusalNote of={of.refusal} />;
  const rows = (answer.checks ?? []).filter(({ verdict }) => verdict !== "not_entered");
  const sorted = [...rows].sort((a, b) => order[a.verdict ?? "go"] - order[b.verdict ?? "go"]);
  return (
    <>
      <ul class="checks">
        {sorted.map((row) => (
          <CheckRow key={row.what} row={row} />
        ))}
      </ul>
      {(answer.not_entered ?? []).length > 0 && (
        <details class="not-entered">
          <summary>
            {fieldDay.notEntered} ({(answer.not_entered ?? []).length})
          </summary>
          <ul>
            {(answer.not_entered ?? []).map((line, index) => (
              <li key={index}>{degrees(line)}</li>
            ))}
          </ul>
        </details>
      )}
      <Findings of={of.findings} />
      <WorkingButton of={of} title={fieldDay.checkRows} />
    </>
  );
}

function CheckRow({ row }: { row: WindowRow }): JSX.Element {
  const { fieldDay } = useWords();
  const verdict = row.verdict ?? "not_known";
  return (
    <li class={`check ${verdict}`}>
      <svg viewBox="0 0 64 64" width="30" height="30" aria-hidden="true">
        <path class="board-form" d={shapes[verdict === "not_entered" ? "none" : verdict]} />
        <path class="board-mark" d={marks[verdict === "not_entered" ? "none" : verdict]} />
      </svg>
      <span>
        <strong>{fieldDay.checkWord[verdict]}</strong> {degrees(row.text ?? "")}
        {row.whose && row.limit && <small>{say(fieldDay.whose, row.whose, degrees(row.limit))}</small>}
      </span>
    </li>
  );
}
