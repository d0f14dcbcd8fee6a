// Sixteen buttons round a square, each a point of the compass. In the middle an arrow blows as the wind does.
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import { FieldFrame } from "@/parts/field_frame";
import { useWords } from "@/words/words";

const points = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"] as const;
export type Point = (typeof points)[number];

// The rows of the square, as the eye reads them; the middle three by three is the arrow.
const rows: Array<Array<Point | "">> = [
  ["NW", "NNW", "N", "NNE", "NE"],
  ["WNW", "", "", "", "ENE"],
  ["W", "", "", "", "E"],
  ["WSW", "", "", "", "ESE"],
  ["SW", "SSW", "S", "SSE", "SE"],
];

export function Compass({ value, onValue, error }: { value: Point | ""; onValue: (point: Point | "") => void; error?: string }): JSX.Element {
  const id = useId();
  const { fieldDay } = useWords();
  return (
    <FieldFrame id={id} group label={fieldDay.direction} hint={fieldDay.directionHint} error={error}>
      <div class="compass">
        {rows.flat().map((point, index) =>
          point === "" ? null : (
            <button
              key={index}
              type="button"
              class={`point at-${index} ${point === value ? "chosen" : ""}`}
              aria-pressed={point === value}
              onClick={() => onValue(point === value ? "" : point)}
            >
              {fieldDay.pointShort[point]}
              <span class="visually-hidden"> {fieldDay.points[point]}</span>
            </button>
          ),
        )}
        <div class="compass-middle">
          {value !== "" && (
            <svg viewBox="-50 -50 100 100" aria-hidden="true">
              <path class="compass-arrow" transform={`rotate(${points.indexOf(value) * 22.5})`} d="M0 40V-24M-18 18L0 40l18-22M0-24V-40" />
            </svg>
          )}
          <strong>{value === "" ? fieldDay.noDirection : fieldDay.points[value]}</strong>
        </div>
      </div>
    </FieldFrame>
  );
}
