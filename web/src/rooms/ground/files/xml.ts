// KML and GPX, read by the browser's own parser. Both are longitude and latitude on WGS 84 by definition.
import { closedRing, groundOf, isClosed, MapFileError, polygonOf, position, type Ring, type Shape } from "./shapes";
import type { Found } from "./geojson";

export function readXml(text: string): Found {
  // Entities can blow a small file up to fill the memory; no map needs them.
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) throw new MapFileError("entities");
  const page = new DOMParser().parseFromString(text, "application/xml");
  if (page.querySelector("parsererror") !== null) throw new MapFileError("damaged");
  const root = page.documentElement;
  if (root.localName === "kml") return readKml(root);
  if (root.localName === "gpx") return readGpx(root);
  throw new MapFileError("notMap");
}

const all = (of: Element, name: string): Element[] => [...of.getElementsByTagNameNS("*", name)];
const childText = (of: Element, name: string): string => [...of.children].find((child) => child.localName === name)?.textContent?.trim().slice(0, 120) ?? "";

// "lon,lat,height lon,lat,height": heights are left out.
function kmlLine(of: Element | undefined): number[][] {
  const text = (of && all(of, "coordinates")[0]?.textContent?.trim()) ?? "";
  if (text === "") throw new MapFileError("damaged");
  return text.split(/\s+/).map((tuple) => position(tuple.split(",").map(number)));
}

const number = (text: string): number => (text.trim() === "" ? Number.NaN : Number(text));

function kmlPolygon(of: Element): Ring[] {
  const outer = all(of, "outerBoundaryIs")[0];
  if (outer === undefined) throw new MapFileError("damaged");
  return [outer, ...all(of, "innerBoundaryIs")].map((edge) => closedRing(kmlLine(edge)));
}

function readKml(root: Element): Found {
  const found: Found = { shapes: [], leftOut: all(root, "NetworkLink").length };
  for (const mark of all(root, "Placemark")) {
    const name = childText(mark, "name");
    const polygons = all(mark, "Polygon").map(kmlPolygon);
    const loose = all(mark, "LinearRing").filter((ring) => !/BoundaryIs$/.test(ring.parentElement?.localName ?? ""));
    polygons.push(...loose.map((ring) => [closedRing(kmlLine(ring))]));
    const lines = all(mark, "LineString").map(kmlLine);
    polygons.push(...lines.filter(isClosed).map((line) => [line]));
    if (polygons.length > 0) found.shapes.push({ name, boundary: groundOf(polygons) });
    else found.leftOut += 1;
  }
  return found;
}

function gpxPosition(point: Element): number[] {
  return position([number(point.getAttribute("lon") ?? ""), number(point.getAttribute("lat") ?? "")]);
}

// A walked track or a route is an edge. That its ends were apart, or that it came in pieces, is said.
function gpxEdge(of: Element, pieces: number[][][]): Shape | undefined {
  const line = pieces.flat();
  if (line.length < 3) return undefined;
  return {
    name: childText(of, "name"),
    boundary: polygonOf([closedRing(line)]),
    closed_by_hand: !isClosed(line),
    pieces: pieces.length > 1 ? pieces.length : undefined,
  };
}

function readGpx(root: Element): Found {
  const found: Found = { shapes: [], leftOut: [...root.children].filter((child) => child.localName === "wpt").length };
  const put = (shape: Shape | undefined) => {
    if (shape === undefined) found.leftOut += 1;
    else found.shapes.push(shape);
  };
  for (const track of all(root, "trk")) {
    const pieces = all(track, "trkseg").map((piece) => all(piece, "trkpt").map(gpxPosition));
    put(gpxEdge(track, pieces.filter((piece) => piece.length > 0)));
  }
  for (const route of all(root, "rte")) put(gpxEdge(route, [all(route, "rtept").map(gpxPosition)]));
  return found;
}
