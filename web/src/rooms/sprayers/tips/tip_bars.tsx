// Each tip against the limits: a mark on a track with limit lines, and the verdict by shape and by word.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { TipResult, TipVerdict } from "@/core/operations.gen";
import { measured, show, showNumber } from "@/core/quantity";
import { WorkingButton } from "@/parts/answer";
import { say, useWords } from "@/words/words";

const half = 20; // percent at either end of the track

// Circle, square, triangle up, triangle down, diamond: told apart without colour.
const shapes: Record<TipVerdict, string> = {
  ok: "M0 -7a7 7 0 1 0 .01 0z",
  at_limit: "M-7 -7h14v14h-14z",
  high_worn: "M0 -9l9 16h-18z",
  low_clogged: "M0 9l9 -16h-18z",
  other_size: "M0 -10l10 10l-10 10l-10 -10z",
};

export function TipBars({ of }: { of: Asked<"tip-check"> }): JSX.Element | null {
  const { sprayers } = useWords();
  const words = sprayers.tips;
  const { answer } = of;
  if (answer?.tips === undefined) return null;
  const rated = answer.rated !== undefined;
  const limits = rated ? [answer.limits?.above_rating, answer.limits?.below_rating] : [answer.limits?.above_mean, answer.limits?.below_mean];
  const [above, below] = limits.map((limit) => measured(limit)?.value);
  const lines = [above, below === undefined ? undefined : -below].filter((line) => line !== undefined);
  const mean = rated ? measured(answer.mean_from_rating)?.value : 0;
  return (
    <div class="tip-bars">
      <p class="hint">
        {say(rated ? words.axisRating : words.axisMean, show(rated ? answer.rated : answer.mean))} {words.limitLines} {say(words.limitIs, answer.limit_text ?? "")}
        <small>{answer.limit_source}</small>
      </p>
      <ol>
        {answer.tips.map((tip) => (
          <TipLine key={tip.tip} tip={tip} rated={rated} lines={lines} mean={mean} />
        ))}
      </ol>
      <WorkingButton of={of} title={words.bars} />
    </div>
  );
}

interface LineProps {
  tip: TipResult;
  rated: boolean;
  lines: number[];
  mean: number | undefined;
}

const place = (percent: number): number => 100 + 100 * Math.max(-1, Math.min(1, percent / half));

function TipLine({ tip, rated, lines, mean }: LineProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.tips;
  const off = measured(rated ? tip.from_rating : tip.from_mean)?.value ?? 0;
  const verdict = tip.verdict ?? "ok";
  return (
    <li class={`tip-line ${verdict}`}>
      <span class="tip-name">{say(sprayers.calibrate.catch.tip, tip.tip ?? 0)}</span>
      <svg viewBox="-4 0 208 28" aria-hidden="true">
        <path class="track" d="M0 14h200" />
        <path class="zero" d="M100 4v20" />
        {lines.map((line) => (
          <path key={line} class="limit" d={`M${place(line)} 2v24`} />
        ))}
        {mean !== undefined && <path class="mean" d={`M${place(mean)} 2v24`} />}
        <path class="mark" d={shapes[verdict]} transform={`translate(${place(off)} 14)`} />
      </svg>
      <span class="tip-flow">{show(tip.flow)}</span>
      <span class="tip-verdict">
        <strong>
          {off > 0 ? "+" : ""}
          {showNumber(off, 2)} %
        </strong>{" "}
        {words.verdicts[verdict]}
        {tip.reads_like && ` (${tip.reads_like})`}
      </span>
      {tip.what_to_do && <span class="tip-todo">{tip.what_to_do}</span>}
    </li>
  );
}
