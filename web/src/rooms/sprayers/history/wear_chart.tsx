// Flow over new, against ground or days: points, the trend through them, and the limit.
import type { JSX } from "preact";
import type { WearAnswer } from "@/core/operations.gen";
import { measured, show, showNumber } from "@/core/quantity";
import { say, showDate, useWords } from "@/words/words";
import { daysBetween } from "../days";

const [wide, high, left, foot, top] = [360, 220, 44, 34, 14];

interface Dot {
  x: number;
  over: number;
  trend: number | undefined;
}

// Where a point stands on the drawing: the number of its ground or liquid, or its day.
function dotsOf({ rows = [], axis }: WearAnswer): Dot[] {
  const first = rows[0]?.date ?? "";
  return rows.flatMap(({ date = "", at = "", over_new: over, trend }) => {
    const x = axis === "time" ? daysBetween(first, date) : Number.parseFloat(at.replace(",", "."));
    const height = measured(over)?.value;
    return x === undefined || Number.isNaN(x) || height === undefined ? [] : [{ x, over: height, trend: measured(trend)?.value }];
  });
}

/** Where the trend meets the limit, if that is not further ahead than the measurements reach back. */
function crossingOf(of: WearAnswer, dots: Dot[]): { x: number; name: string } | undefined {
  const [first, last] = [dots[0], dots.at(-1)];
  const place = of.axis === "area" ? of.limit_at_area : of.axis === "volume" ? of.limit_at_volume : undefined;
  const days = of.axis === "time" && of.limit_on ? daysBetween(of.rows?.[0]?.date ?? "", of.limit_on) : undefined;
  const x = measured(place)?.value ?? days;
  if (first === undefined || last?.trend === undefined || x === undefined) return undefined;
  const isNear = x > last.x && x <= last.x + 2 * (last.x - first.x);
  return isNear ? { x, name: of.axis === "time" ? showDate(of.limit_on ?? "") : show(place) } : undefined;
}

export function WearChart({ of }: { of: WearAnswer }): JSX.Element | null {
  const words = useWords().sprayers.history;
  const dots = dotsOf(of);
  const limit = measured(of.limit)?.value;
  if (dots.length < 2 || limit === undefined) return null;
  const cross = crossingOf(of, dots);
  const heights = dots.flatMap(({ over, trend }) => [over, trend ?? over]);
  const [low, up] = [Math.min(0, ...heights) - 1, Math.max(limit, ...heights) + 1.5];
  const [from, to] = [Math.min(...dots.map(({ x }) => x)), Math.max(...dots.map(({ x }) => x), cross?.x ?? 0)];
  const across = (x: number) => left + ((wide - left - 14) * (x - from)) / Math.max(to - from, 1e-9);
  const up_ = (percent: number) => top + ((high - top - foot) * (up - percent)) / (up - low);
  const rows = of.rows ?? [];
  const name = (row: (typeof rows)[number] | undefined) => (of.axis === "time" ? showDate(row?.date ?? "") : (row?.at ?? ""));
  const xTitle = of.axis === "time" ? words.axisDate : of.axis === "area" ? words.axisArea : words.axisVolume;
  const line = dots.filter(({ trend }) => trend !== undefined).map(({ x, trend }) => `${across(x).toFixed(1)} ${up_(trend ?? 0).toFixed(1)}`);
  return (
    <figure class="chart">
      <figcaption>{words.axisOver}</figcaption>
      <svg viewBox={`0 0 ${wide} ${high}`} role="img" aria-label={say(words.chart, xTitle, dots.length, name(rows[0]), name(rows.at(-1)))}>
        {[0, limit].map((percent) => (
          <g key={percent}>
            <path class={percent === limit ? "limit" : "axis"} d={`M${left} ${up_(percent)}H${wide - 8}`} />
            <text x={left - 6} y={up_(percent) + 5} text-anchor="end">
              {showNumber(percent)} %
            </text>
          </g>
        ))}
        <text class="limit-name" x={wide - 10} y={up_(limit) - 6} text-anchor="end">
          {words.limit}
        </text>
        <text x={wide - 10} y={up_(0) - 6} text-anchor="end">
          {words.asNew}
        </text>
        {line.length > 1 && <path class="trend" d={`M${line.join("L")}`} />}
        {cross && <path class="trend ahead" d={`M${line.at(-1)}L${across(cross.x)} ${up_(limit)}`} />}
        {dots.map(({ x, over }, index) => (
          <circle key={index} cx={across(x)} cy={up_(over)} r="6" />
        ))}
        <text x={left} y={high - 10}>
          {name(rows[0])}
        </text>
        <text x={wide - 8} y={high - 10} text-anchor="end">
          {cross ? cross.name : name(rows.at(-1))}
        </text>
      </svg>
      <p class="chart-foot">{xTitle}</p>
      <details class="fold">
        <summary>{words.points}</summary>
        <div class="table-wide">
          <table class="table">
            <tbody>
              {rows.map((row, index) => (
                <tr key={index}>
                  <th scope="row">{row.date ? showDate(row.date) : ""}</th>
                  <td>{of.axis === "time" ? "" : row.at}</td>
                  <td class="number">{show(row.flow)}</td>
                  <td class="number">{show(row.over_new)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  );
}
