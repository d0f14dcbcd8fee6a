import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readMapFile } from "./read_map_file";
import { swapped } from "./shapes";

const square = [[-128.4, -38.65], [-128.398, -38.65], [-128.398, -38.648], [-128.4, -38.65]];
const file = (content: unknown) => new Blob([typeof content === "string" ? content : JSON.stringify(content)]);
const fault = (content: unknown) => readMapFile(file(content)).then(() => "taken", (error: { fault: string }) => error.fault);

describe("a map file", () => {
  it("gives its polygons with their names, heights left out", async () => {
    const { shapes, leftOut } = await readMapFile(
      file({
        type: "FeatureCollection",
        features: [
          { type: "Feature", properties: { NAME: "Heron Flat" }, geometry: { type: "Polygon", coordinates: [square.map((at) => [...at, 12])] } },
          { type: "Feature", properties: {}, geometry: { type: "Point", coordinates: [1, 2] } },
          { type: "Feature", properties: null, geometry: { type: "LineString", coordinates: square } },
        ],
      }),
    );
    expect(leftOut).toBe(1);
    expect(shapes.map(({ name }) => name)).toEqual(["Heron Flat", ""]);
    expect(shapes[0]?.boundary).toEqual({ type: "Polygon", coordinates: [square] });
  });
  it("is refused whole when it is cut off, empty, too odd or on another map", async () => {
    expect(await fault('{"type":"Polygon","coordinates":[[[1,2],[')).toBe("damaged");
    expect(await fault("")).toBe("empty");
    expect(await fault("hello")).toBe("notMap");
    expect(await fault({ type: "Topology" })).toBe("notMap");
    expect(await fault({ type: "Point", coordinates: [1, 2] })).toBe("noGround");
    expect(await fault({ type: "Polygon", coordinates: [[[1, 2], [3, "4"], [5, 6], [1, 2]]] })).toBe("notNumber");
    expect(await fault({ type: "Polygon", coordinates: [square], crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::32615" } } })).toBe("otherMap");
    expect(await fault("PK\u0003\u0004 not really a zip")).toBe("damaged");
    expect(await fault("\u0000\u0000\u0027\u000a")).toBe("shapefile");
  });
  it("may name longitude and latitude on WGS 84 the old way", async () => {
    const { shapes } = await readMapFile(file({ type: "Polygon", coordinates: [square], crs: { type: "name", properties: { name: "urn:ogc:def:crs:OGC:1.3:CRS84" } } }));
    expect(shapes).toHaveLength(1);
  });
  it("that nests for ever is damaged", async () => {
    let inner: unknown = { type: "Polygon", coordinates: [square] };
    for (let depth = 0; depth < 50; depth += 1) inner = { type: "GeometryCollection", geometries: [inner] };
    expect(await fault(inner)).toBe("damaged");
  });
  it("zipped without a KML says so", async () => {
    const zip = zipSync({ "readme.txt": strToU8("no map") });
    expect(await readMapFile(new Blob([zip.slice().buffer])).then(() => "taken", (error: { fault: string }) => error.fault)).toBe("noKml");
  });
});

it("turns positions round", () => {
  expect(swapped({ name: "", boundary: { type: "Polygon", coordinates: [[[1, 2]]] } }).boundary.coordinates).toEqual([[[2, 1]]]);
});
