// The spread of a class: a row for each learner with a dot and the bar of its interval, a line at the mean.
// One outside the others has an open diamond and its word: nothing is told by colour alone.
import type { JSX } from "preact";
import type { LearnersAnswer, LearnerResult } from "@/core/operations.gen";
import { measured, show, showNumber, showUnit } from "@/core/quantity";
import { say, useWords } from "@/words/words";

const wide = 360;
const left = 14;
const right = wide - 14;
const rowHeight = 46;
const top = 34;

interface Scale {
  low: number;
  high: number;
}

/** Where a value stands on the paper. */
const placeOf = ({ low, high }: Scale, value: number) => left + ((value - low) / (high - low || 1)) * (right - left);

function scaleOf(answer: LearnersAnswer): Scale | undefined {
  const values = (answer.learners ?? []).flatMap(({ output }) => {
    const { value, low, high } = measured(output) ?? {};
    return [value, low, high].filter((each): each is number => each !== undefined);
  });
  return values.length === 0 ? undefined : { low: Math.min(...values), high: Math.max(...values) };
}

export function SpreadPicture({ answer }: { answer: LearnersAnswer }): JSX.Element | null {
  const { classRoom } = useWords();
  const scale = scaleOf(answer);
  const mean = measured(answer.mean);
  const learners = answer.learners ?? [];
  if (scale === undefined || mean === undefined || learners.length < 2) return null;
  const height = top + learners.length * rowHeight + 26;
  const at = placeOf(scale, mean.value);
  const words = say(classRoom.pictureWords, learners.length, show(answer.mean), show(answer.lowest), show(answer.highest));
  return (
    <figure class="spread">
      <svg viewBox={`0 0 ${wide} ${height}`} role="img" aria-label={words}>
        <line class="spread-mean" x1={at} y1={22} x2={at} y2={height - 22} />
        <text class="spread-mean-word" x={inside(at)} y={15} text-anchor={anchorAt(at)}>
          {say(classRoom.meanAt, showNumber(mean.value))}
        </text>
        {learners.map((learner, index) => (
          <Row key={learner.name} learner={learner} scale={scale} y={top + index * rowHeight} />
        ))}
        <text x={left} y={height - 4}>
          {showNumber(scale.low)}
        </text>
        <text x={right} y={height - 4} text-anchor="end">
          {showNumber(scale.high)} {showUnit(mean.unit)}
        </text>
      </svg>
      <figcaption class="hint">{classRoom.pictureHint}</figcaption>
    </figure>
  );
}

const inside = (at: number) => Math.min(Math.max(at, left), right);
const anchorAt = (at: number) => (at < wide / 3 ? "start" : at > (2 * wide) / 3 ? "end" : "middle");

function Row({ learner, scale, y }: { learner: LearnerResult; scale: Scale; y: number }): JSX.Element | null {
  const { classRoom } = useWords();
  const output = measured(learner.output);
  if (output === undefined) return null;
  const at = placeOf(scale, output.value);
  const { low = output.value, high = output.value } = output;
  const middle = y + 28;
  const words = [`${learner.name}: ${showNumber(output.value)}`, learner.outside ? classRoom.outside : ""].filter(Boolean).join(", ");
  return (
    <g>
      <text class="spread-name" x={left} y={y + 12}>
        {words}
      </text>
      <line class="spread-rule" x1={left} y1={middle} x2={right} y2={middle} />
      <line class="spread-bar" x1={placeOf(scale, low)} y1={middle} x2={placeOf(scale, high)} y2={middle} />
      {learner.outside ? <path class="spread-out" d={`M${at} ${middle - 9}l9 9l-9 9l-9-9z`} /> : <circle class="spread-dot" cx={at} cy={middle} r={6} />}
    </g>
  );
}
