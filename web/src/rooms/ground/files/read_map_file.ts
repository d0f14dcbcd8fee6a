// A file somebody dropped or picked, told by what is in it and not by its name.
import { strFromU8, unzipSync } from "fflate";
import { readGeoJson, type Found } from "./geojson";
import { MapFileError, mostShapes } from "./shapes";
import { readXml } from "./xml";

const mostBytes = 30_000_000;

/** @throws MapFileError, and then nothing of the file was taken */
export async function readMapFile(file: Blob): Promise<Found> {
  if (file.size === 0) throw new MapFileError("empty");
  if (file.size > mostBytes) throw new MapFileError("tooBig", "30 MB");
  const found = readMap(new Uint8Array(await file.arrayBuffer()));
  if (found.shapes.length === 0) throw new MapFileError("noGround", String(found.leftOut));
  if (found.shapes.length > mostShapes) throw new MapFileError("tooMany", String(found.shapes.length));
  return found;
}

function readMap(bytes: Uint8Array): Found {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return readMap(kmlInside(bytes));
  if (bytes[0] === 0 && bytes[1] === 0 && bytes[2] === 0x27 && bytes[3] === 0x0a) throw new MapFileError("shapefile");
  const text = textOf(bytes).trimStart();
  if (text.startsWith("{")) return readGeoJson(text);
  if (text.startsWith("<")) return readXml(text);
  throw new MapFileError("notMap");
}

/** KMZ: a zip with one KML that counts, the first at its top. */
function kmlInside(bytes: Uint8Array): Uint8Array {
  let picked: string | undefined;
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (picked !== undefined || !/\.kml$/i.test(name)) return false;
        if (originalSize > mostBytes) throw new MapFileError("tooBig", "30 MB");
        picked = name;
        return true;
      },
    });
  } catch (error) {
    throw error instanceof MapFileError ? error : new MapFileError("damaged");
  }
  const kml = picked === undefined ? undefined : files[picked];
  if (kml === undefined) throw new MapFileError("noKml");
  if (kml[0] === 0x50 && kml[1] === 0x4b) throw new MapFileError("damaged"); // a zip in a zip goes on for ever
  return kml;
}

function textOf(bytes: Uint8Array): string {
  const named = /^<\?xml[^>]*encoding=["']([\w-]+)["']/.exec(strFromU8(bytes.subarray(0, 200), true))?.[1];
  try {
    return new TextDecoder(named ?? "utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new MapFileError("damaged");
  }
}
