// GeoJSON (RFC 7946): polygons, and lines that end where they began.
import { closedRing, groundOf, isClosed, MapFileError, polygonOf, position, type Ring, type Shape } from "./shapes";

type Member = Record<string, unknown>;

const isMember = (value: unknown): value is Member => typeof value === "object" && value !== null && !Array.isArray(value);

export interface Found {
  shapes: Shape[];
  /** Points and open lines that hold no ground. */
  leftOut: number;
}

export function readGeoJson(text: string): Found {
  const root = parsed(text);
  refuseOtherMap(root);
  const found: Found = { shapes: [], leftOut: 0 };
  collect(root, "", found, 0);
  return found;
}

function parsed(text: string): Member {
  try {
    const root: unknown = JSON.parse(text);
    if (isMember(root)) return root;
  } catch {
    throw new MapFileError("damaged");
  }
  throw new MapFileError("notMap");
}

// The old "crs" member: only longitude and latitude on WGS 84 can be taken.
function refuseOtherMap(root: Member): void {
  if (!isMember(root["crs"])) return;
  const properties = root["crs"]["properties"];
  const name = isMember(properties) ? String(properties["name"] ?? "") : JSON.stringify(root["crs"]);
  if (!/CRS:?:?84$|EPSG:+(\d*:)?4326$/i.test(name)) throw new MapFileError("otherMap", name.slice(0, 80));
}

function nameOf(properties: unknown): string {
  if (!isMember(properties)) return "";
  for (const wanted of ["name", "title", "nombre", "label", "id"]) {
    for (const [key, value] of Object.entries(properties)) {
      if (key.toLowerCase() === wanted && (typeof value === "string" || typeof value === "number")) return String(value).trim().slice(0, 120);
    }
  }
  return "";
}

const list = (value: unknown): unknown[] => {
  if (!Array.isArray(value)) throw new MapFileError("damaged");
  return value;
};
const ring = (value: unknown): Ring => closedRing(list(value).map(position));
const rings = (value: unknown): Ring[] => list(value).map(ring);

function collect(member: unknown, name: string, found: Found, depth: number): void {
  if (depth > 8) throw new MapFileError("damaged");
  if (member === null) return;
  if (!isMember(member)) throw new MapFileError("damaged");
  const coordinates = member["coordinates"];
  switch (member["type"]) {
    case "FeatureCollection":
      list(member["features"]).forEach((feature) => collect(feature, "", found, depth + 1));
      return;
    case "Feature":
      return collect(member["geometry"] ?? null, nameOf(member["properties"]), found, depth + 1);
    case "GeometryCollection":
      list(member["geometries"]).forEach((geometry) => collect(geometry, name, found, depth + 1));
      return;
    case "Polygon":
      found.shapes.push({ name, boundary: polygonOf(rings(coordinates)) });
      return;
    case "MultiPolygon":
      found.shapes.push({ name, boundary: groundOf(list(coordinates).map(rings)) });
      return;
    case "LineString": {
      const line = list(coordinates).map(position);
      if (isClosed(line)) found.shapes.push({ name, boundary: polygonOf([line]) });
      else found.leftOut += 1;
      return;
    }
    case "Point":
    case "MultiPoint":
    case "MultiLineString":
      found.leftOut += 1;
      return;
    default:
      throw new MapFileError("notMap");
  }
}
