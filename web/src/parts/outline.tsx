// A piece of ground as its outline, north up, with a scale bar. A picture only: east-west is drawn shorter
// by the cosine of the latitude; the length of the bar is the core's.
import type { JSX } from "preact";
import { ask } from "@/core/core";
import type { GeoJson } from "@/core/operations.gen";
import { measured, showNumber, showUnit } from "@/core/quantity";
import { useSettings } from "@/app/settings";
import { say, useWords } from "@/words/words";

export interface Line {
  points: number[][];
  /** "edge" solid, "gap" dashed, "sprayed" thick, "driven" thin. */
  style: "edge" | "gap" | "sprayed" | "driven";
}

interface Props {
  label: string;
  ground?: { type: "Polygon" | "MultiPolygon"; coordinates: unknown };
  lines?: Line[];
  /** Where the person stands. */
  here?: number[];
}

const width = 360;
const height = 270;
const margin = 22;

const ringsOf = (ground: Props["ground"]): number[][][] => {
  if (ground === undefined) return [];
  return ground.type === "Polygon" ? (ground.coordinates as number[][][]) : (ground.coordinates as number[][][][]).flat();
};

interface Box {
  west: number;
  south: number;
  east: number;
  north: number;
}

function boxOf(points: number[][]): Box {
  const box: Box = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (const [lon = 0, lat = 0] of points) {
    box.west = Math.min(box.west, lon);
    box.east = Math.max(box.east, lon);
    box.south = Math.min(box.south, lat);
    box.north = Math.max(box.north, lat);
  }
  return box;
}

export function Outline({ label, ground, lines = [], here }: Props): JSX.Element | null {
  useSettings();
  const { ground: words } = useWords();
  const rings = ringsOf(ground);
  const points = [...rings.flat(), ...lines.flatMap((line) => line.points), ...(here ? [here] : [])];
  if (points.length < 2) return null;
  const box = boxOf(points);
  const squeeze = Math.cos(((box.south + box.north) / 2) * (Math.PI / 180));
  const wide = Math.max((box.east - box.west) * squeeze, 1e-6);
  const tall = Math.max(box.north - box.south, 1e-6);
  const perDegree = Math.min((width - 2 * margin) / wide, (height - 2 * margin - 22) / tall);
  const left = (width - wide * perDegree) / 2;
  const top = (height - 22 - tall * perDegree) / 2;
  const x = (lon: number) => (left + (lon - box.west) * squeeze * perDegree).toFixed(1);
  const y = (lat: number) => (top + (box.north - lat) * perDegree).toFixed(1);
  const path = (line: number[][]) => line.map(([lon = 0, lat = 0], index) => `${index === 0 ? "M" : "L"}${x(lon)} ${y(lat)}`).join("");
  const bar = scaleBar(box, (wide * perDegree) / Math.max(box.east - box.west, 1e-6));
  return (
    <svg class="outline" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={bar ? `${label}. ${say(words.northUp, bar.text)}` : label}>
      {rings.length > 0 && <path class="outline-ground" fill-rule="evenodd" d={`${rings.map(path).join("Z")}Z`} />}
      {lines.map((line, index) => (
        <path key={index} class={`outline-line ${line.style}`} d={path(line.points)} />
      ))}
      {here && <circle class="outline-here" cx={x(here[0] ?? 0)} cy={y(here[1] ?? 0)} r="7" />}
      <path class="outline-north" d="M338 40V12M331 21l7-10 7 10" />
      <text class="outline-text" x="338" y="56" text-anchor="middle">
        {words.north}
      </text>
      {bar && (
        <>
          <path class="outline-north" d={`M14 ${height - 16}v8h${bar.pixels.toFixed(1)}v-8`} />
          <text class="outline-text" x={22 + bar.pixels} y={height - 8}>
            {bar.text}
          </text>
        </>
      )}
    </svg>
  );
}

// The core measures one piece of a parallel of the picture; a round length that fits is drawn from it.
function scaleBar(box: Box, pixelsPerDegree: number): { pixels: number; text: string } | undefined {
  const degrees = 100 / pixelsPerDegree;
  const east = box.west + degrees;
  const lat = (box.south + box.north) / 2;
  const sliver: GeoJson = { type: "Polygon", coordinates: [[[box.west, lat], [east, lat], [box.west, lat + degrees * 1e-3], [box.west, lat]]] };
  const length = measured(ask("area", { geometry: sliver }).answer?.longest_edge);
  if (length === undefined || length.value <= 0) return undefined;
  const round = [5, 2, 1].map((first) => first * 10 ** Math.floor(Math.log10(length.value))).find((size) => size <= length.value) ?? length.value;
  return { pixels: (100 * round) / length.value, text: `${showNumber(round)} ${showUnit(length.unit)}` };
}
