// What a map file may give: pieces of ground with their names. Reading is all or nothing.

export type Ring = number[][];

export interface Shape {
  name: string;
  boundary: { type: "Polygon"; coordinates: Ring[] } | { type: "MultiPolygon"; coordinates: Ring[][] };
  /** It was a line; its ends were apart and are joined by a straight edge. */
  closed_by_hand?: boolean;
  /** It was recorded in this many pieces, joined by straight edges. */
  pieces?: number;
}

/** Words that a file was refused with: keys of the catalogue. */
export type FileFault =
  | "tooBig"
  | "empty"
  | "notMap"
  | "shapefile"
  | "damaged"
  | "entities"
  | "otherMap"
  | "noGround"
  | "notNumber"
  | "shortRing"
  | "tooMany"
  | "noKml";

export class MapFileError extends Error {
  constructor(
    readonly fault: FileFault,
    /** What goes into the sentence: a name, a number. */
    readonly what = "",
  ) {
    super(`${fault}: ${what}`);
  }
}

export const mostShapes = 2000;

/** A position of two numbers from what stands in a file; heights are left out. */
export function position(values: unknown): number[] {
  if (!Array.isArray(values) || values.length < 2) throw new MapFileError("notNumber", JSON.stringify(values) ?? "");
  const [lon, lat] = values as unknown[];
  if (typeof lon !== "number" || typeof lat !== "number" || !Number.isFinite(lon) || !Number.isFinite(lat)) {
    throw new MapFileError("notNumber", JSON.stringify(values));
  }
  return [lon, lat];
}

const same = (a: number[] | undefined, b: number[] | undefined) => a?.[0] === b?.[0] && a?.[1] === b?.[1];

export const isClosed = (line: number[][]): boolean => line.length > 3 && same(line[0], line.at(-1));

/** A ring that ends where it began. */
export function closedRing(line: number[][]): Ring {
  const ring = isClosed(line) ? line : [...line, line[0] ?? []];
  if (ring.length < 4) throw new MapFileError("shortRing", String(line.length));
  return ring;
}

export function polygonOf(rings: Ring[]): Shape["boundary"] {
  return { type: "Polygon", coordinates: rings };
}

/** One polygon as Polygon, several as MultiPolygon. */
export function groundOf(polygons: Ring[][]): Shape["boundary"] {
  const [only] = polygons;
  return polygons.length === 1 && only ? polygonOf(only) : { type: "MultiPolygon", coordinates: polygons };
}

/** Longitude and latitude the other way round: for files that have them swapped. */
export function swapped(shape: Shape): Shape {
  const turn = (ring: Ring): Ring => ring.map(([a = 0, b = 0]) => [b, a]);
  const { boundary } = shape;
  if (boundary.type === "Polygon") return { ...shape, boundary: polygonOf(boundary.coordinates.map(turn)) };
  return { ...shape, boundary: { type: "MultiPolygon", coordinates: boundary.coordinates.map((rings) => rings.map(turn)) } };
}
