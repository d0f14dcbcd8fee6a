// Remarks beside an answer: the worst first, told by shape and word as well as by colour.
import type { JSX } from "preact";
import type { Refusal } from "@/core/core";
import type { Finding } from "@/core/operations.gen";
import { useWords } from "@/words/words";

const order = { stop: 0, warning: 1, advice: 2, note: 3 } as const;

export function Findings({ of }: { of: Finding[] | undefined }): JSX.Element | null {
  if (of === undefined || of.length === 0) return null;
  const sorted = [...of].sort((a, b) => order[a.severity] - order[b.severity]);
  return (
    <ul class="findings">
      {sorted.map((finding, index) => (
        <FindingLine key={index} finding={finding} />
      ))}
    </ul>
  );
}

function FindingLine({ finding }: { finding: Finding }): JSX.Element {
  const { common } = useWords();
  return (
    <li class={`finding ${finding.severity}`}>
      <Sign severity={finding.severity} />
      <p>
        <strong>{common.severity[finding.severity]}. </strong>
        {finding.text}
        {finding.source && (
          <small>
            {common.source}: {finding.source}
          </small>
        )}
      </p>
    </li>
  );
}

/** Octagon, triangle, square, circle: told apart without colour. */
export function Sign({ severity }: { severity: Finding["severity"] }): JSX.Element {
  const shape = { stop: "M8 1h8l7 7v8l-7 7H8l-7-7V8z", warning: "M12 2l11 20H1z", advice: "M3 3h18v18H3z", note: "M12 2a10 10 0 1 0 .01 0z" }[severity];
  return (
    <svg class="sign" viewBox="0 0 24 24" width="28" height="28" aria-hidden="true">
      <path d={shape} />
      <text x="12" y={severity === "warning" ? 19 : 17} text-anchor="middle">
        {severity === "note" ? "i" : "!"}
      </text>
    </svg>
  );
}

/** What the core could not read or compute, in its own words. */
export function RefusalNote({ of }: { of: Refusal | undefined }): JSX.Element | null {
  if (of === undefined) return null;
  return (
    <div class="refusal" role="status">
      <Sign severity="warning" />
      <p>{of.detail}</p>
    </div>
  );
}
