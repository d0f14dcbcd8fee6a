// The course seen from above: stakes, run-up, width and length; the short course in the same strip, to scale.
import type { JSX } from "preact";
import type { CourseRow, Quantity } from "@/core/operations.gen";
import { measured, show, showUnit } from "@/core/quantity";
import { say, useWords } from "@/words/words";

interface Props {
  width: Quantity;
  length: Quantity | undefined;
  /** The short course of the same width. */
  short: CourseRow | undefined;
}

const left = 74; // where the first stakes stand
const strip = 250; // the course on the drawing

export function CourseFigure({ width, length, short }: Props): JSX.Element {
  const words = useWords().sprayers.calibrate.course;
  const [long, little] = [measured(length), measured(short?.practical_length)];
  // A place on the drawing, not a result: the short strip against the long one, in the same unit.
  const part = long && little && long.unit === little.unit && long.value > 0 ? Math.min(1, little.value / long.value) : undefined;
  const shown = part !== undefined && part < 0.95;
  const label = shown ? say(words.figure, show(width), show(length), show(short?.practical_length)) : say(words.figurePlain, show(width), show(length));
  return (
    <svg class="course-figure" viewBox="0 0 360 168" role="img" aria-label={label}>
      <rect class="ground" x="0" y="30" width="360" height="92" />
      <rect class="strip" x={left} y="42" width={strip} height="66" />
      {shown && <rect class="short" x={left} y="42" width={Math.max(3, strip * (part ?? 0))} height="66" />}
      <path class="arrow" d={`M8 75h${left - 22}m-10 -8l10 8l-10 8`} />
      <text x="8" y="58">
        {words.runUp}
      </text>
      {[left, left + strip].map((x) => (
        <g key={x} class="stakes">
          <path d={`M${x} 34v82`} />
          <circle cx={x} cy="38" r="6" />
          <circle cx={x} cy="112" r="6" />
        </g>
      ))}
      <text x={left} y="22" text-anchor="middle">
        {words.start}
      </text>
      <text x={left + strip} y="22" text-anchor="middle">
        {words.end}
      </text>
      <path class="measure" d={`M${left} 134h${strip}m-8 -5l8 5l-8 5m-${strip - 16} -10l-8 5l8 5`} />
      <text class="big" x={left + strip / 2} y="158" text-anchor="middle">
        {show(length)}
      </text>
      <path class="measure" d={`M${left + strip + 14} 44v62m-5 -8l5 8l5 -8m-10 -46l5 -8l5 8`} />
      <text x={left + strip - 8} y="80" text-anchor="end" class="big">
        {show(width)}
      </text>
      {shown && (
        <text x={left + strip * (part ?? 0) + 10} y="60">
          {showUnit(short?.part ?? "")}: {show(short?.practical_length)}
        </text>
      )}
    </svg>
  );
}
