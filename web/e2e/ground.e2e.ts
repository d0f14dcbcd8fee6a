// Ground: stands from files, by walking, by typing. Places are invented and lie in open ocean.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { strToU8, zipSync } from "fflate";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { faultsOf } from "./looks";
import { serveDist, type StaticHost } from "./static_server";

let host: StaticHost;
let browser: Browser;
beforeAll(async () => {
  host = await serveDist();
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

const demo = (name: string) => (JSON.parse(readFileSync(fileURLToPath(new URL(`../../data/demo/${name}.json`, import.meta.url)), "utf8")) as { geometry: { geometry: { coordinates: number[][][] } } }).geometry;
const heron = demo("05-area-heron-flat");
const kettle = demo("06-area-kettle-draw");

const kmlRing = (ring: number[][]) => `<LinearRing><coordinates>${ring.map(([lon, lat]) => `${lon},${lat},0`).join("\n")}</coordinates></LinearRing>`;
const kml = (inner: string) => `<?xml version="1.0" encoding="UTF-8"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inner}</Document></kml>`;
const kettleKml = kml(
  `<Placemark><name>Kettle Draw</name><Polygon><outerBoundaryIs>${kmlRing(kettle.geometry.coordinates[0] ?? [])}</outerBoundaryIs>` +
    `<innerBoundaryIs>${kmlRing(kettle.geometry.coordinates[1] ?? [])}</innerBoundaryIs></Polygon></Placemark><Placemark><name>Gate</name><Point><coordinates>-128.4,-38.65</coordinates></Point></Placemark>`,
);
const gpx = `<?xml version="1.0"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Spur Ridge</name><trkseg>${[
  [-128.3979323, -38.6472074], [-128.3971971, -38.6471534], [-128.3965767, -38.6468471], [-128.396772, -38.6466129], [-128.3973923, -38.646739], [-128.3980012, -38.6469552],
].map(([lon, lat]) => `<trkpt lat="${lat}" lon="${lon}"/>`).join("")}</trkseg></trk></gpx>`;

async function named(context: BrowserContext, changes: object = {}): Promise<void> {
  await context.addInitScript((extra) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", JSON.stringify({ author: "Ada Quill", units: "us", language: "en", ...extra }));
  }, changes);
}

const give = (page: Page, name: string, content: string | Uint8Array) =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(content) });

describe("ground", () => {
  for (const [size, options] of Object.entries({ phone, desk })) {
    it(`takes a stand from GeoJSON and shows what the core says on a ${size}`, async () => {
      const context = await browser.newContext(options);
      await named(context);
      const { page, check } = await openPage(context, `${host.url}#/ground`);
      await page.getByText("No stands yet").waitFor();
      await page.getByRole("link", { name: "From a map file" }).click();
      await give(page, "heron.geojson", JSON.stringify(heron));
      await page.getByRole("textbox", { name: "How far off a corner may be" }).fill("3");
      await page.getByText(/7\.4 ac/).first().waitFor();
      await shot(page, `ground-file-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      await page.getByRole("button", { name: "Save the stand" }).click();
      await page.getByRole("heading", { level: 1, name: "Heron Flat" }).waitFor();
      await shot(page, `ground-stand-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      const download = page.waitForEvent("download");
      await page.getByRole("button", { name: "Save as a GeoJSON file" }).click();
      const file = await (await download).path();
      const saved = JSON.parse(readFileSync(file, "utf8")) as { features: Array<{ properties: { name: string }; geometry: unknown }> };
      expect(saved.features[0]?.geometry).toEqual(heron.geometry);
      expect(saved.features[0]?.properties.name).toBe("Heron Flat");
      await page.goto(`${host.url}#/ground`);
      await page.getByText(/7\.4 ac \(/).waitFor();
      await shot(page, `ground-list-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      check();
      await context.close();
    });
  }

  it("reads KML with a hole, KMZ and a GPX track, and saves several at once", async () => {
    const context = await browser.newContext(phone);
    await named(context);
    const { page, check } = await openPage(context, `${host.url}#/ground/file`);
    await give(page, "kettle.kml", kettleKml);
    await page.getByText("1 piece inside left out").waitFor();
    await page.getByText("1 point or open line holds no ground").waitFor();
    await give(page, "kettle.kmz", zipSync({ "doc.kml": strToU8(kettleKml) }));
    await page.getByText("1 piece inside left out").waitFor();
    await give(page, "spur.gpx", gpx);
    await page.getByText("The ends of this line were apart").waitFor();
    await give(page, "both.geojson", JSON.stringify({ type: "FeatureCollection", features: [{ ...heron }, { ...kettle }] }));
    await page.getByText("Which of them?").waitFor();
    await page.locator("label.tick").nth(0).click();
    await page.locator("label.tick").nth(1).click();
    await page.getByRole("button", { name: "Save 2 stands" }).click();
    await page.getByRole("heading", { level: 1, name: "Ground" }).waitFor();
    expect(await page.locator(".thing strong").allTextContents()).toEqual(expect.arrayContaining(["Heron Flat", "Kettle Draw"]));
    // A map of another part of the world is noticed.
    await page.goto(`${host.url}#/ground/file`);
    const elsewhere = [[10, 10], [10.01, 10], [10.01, 10.01], [10, 10]];
    await give(page, "elsewhere.geojson", JSON.stringify({ type: "Polygon", coordinates: [elsewhere] }));
    await page.getByText(/more than 200 km \(120 miles\) from (Heron Flat|Kettle Draw)/).waitFor();
    await page.goto(`${host.url}#/ground/landowners`);
    await page.getByRole("link", { name: "New landowner" }).click();
    await page.getByLabel("Name", { exact: true }).fill("Wren Oakhollow");
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("Wren Oakhollow").waitFor();
    await page.goto(`${host.url}#/ground/typed`);
    await page.getByRole("textbox", { name: /^Area/ }).fill("2.5");
    await page.getByLabel("Name of the stand").fill("Lower Fen");
    await page.getByLabel("Landowner").selectOption({ label: "Wren Oakhollow" });
    await page.getByRole("button", { name: "Save the stand" }).click();
    await page.getByRole("heading", { level: 1, name: "Lower Fen" }).waitFor();
    await page.getByText("2.5 ac").waitFor();
    check();
    await context.close();
  });

  it("refuses hostile and broken files whole, with what to do", async () => {
    const context = await browser.newContext(phone);
    await named(context);
    const { page } = await openPage(context, `${host.url}#/ground/file`);
    for (const [name, content, words] of [
      ["cut.kml", kettleKml.slice(0, 400), "damaged or cut off"],
      ["bomb.kml", `<!DOCTYPE a [<!ENTITY b "bbbb">]>${kettleKml}`, "definitions that no map needs"],
      ["other.geojson", JSON.stringify({ ...heron, crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::32615" } } }), "counts in another grid"],
      ["words.txt", "just words", "not a map this page can read"],
      ["nan.gpx", gpx.replace(/lat="[^"]*"/, 'lat="north"'), "not two numbers"],
    ] as const) {
      await give(page, name, content);
      await page.getByRole("alert").getByText(words).waitFor();
      expect(await page.getByRole("button", { name: "Save the stand" }).count()).toBe(0);
    }
    await shot(page, "ground-refused-phone");
    expect(await faultsOf(page)).toEqual([]);
    // Latitude first: the core notices, and one press turns them round.
    const turned = { ...heron, geometry: { type: "Polygon", coordinates: heron.geometry.coordinates.map((ring) => ring.map(([a, b]) => [b, a])) } };
    await give(page, "turned.geojson", JSON.stringify(turned));
    await page.getByRole("button", { name: "Turn them round" }).click();
    await page.getByText(/7\.4 ac/).first().waitFor();
    await page.goto(`${host.url}#/ground`);
    await page.getByText("No stands yet").waitFor();
    await context.close(); // not checked: Chromium's page for broken XML asks for a style that the content policy refuses
  });

  it("walks an edge with a gap, survives a reload, and says the gap before saving", async () => {
    const context = await browser.newContext({ ...phone, permissions: ["geolocation"], geolocation: { longitude: -128.398, latitude: -38.647, accuracy: 4 } });
    await named(context, { language: "es", units: "metric" });
    const { page, check } = await openPage(context, `${host.url}#/ground/walk`);
    await page.getByRole("button", { name: "Empezar a caminar" }).click();
    const walk = async (points: number[][]) => {
      for (const [longitude = 0, latitude = 0] of points) {
        await context.setGeolocation({ longitude, latitude, accuracy: 4 });
        await page.waitForTimeout(150);
      }
    };
    await walk([[-128.3979, -38.647], [-128.3975, -38.647], [-128.397, -38.647], [-128.397, -38.6466], [-128.397, -38.6462]]);
    await page.getByText("Buena posición").waitFor();
    await page.waitForTimeout(3500); // a batch is written every three seconds
    await page.reload();
    await page.getByText(/posiciones/).first().waitFor();
    await walk([[-128.3974, -38.6462], [-128.398, -38.6462], [-128.398, -38.6466]]);
    await page.getByText("1 hueco").waitFor();
    await shot(page, "ground-walk-phone");
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Di la vuelta" }).click();
    await page.getByLabel("Nombre del rodal").fill("Cuesta");
    const save = page.getByRole("button", { name: "Guardar el rodal" });
    expect(await save.isDisabled()).toBe(true);
    await page.locator("label.tick").click();
    await save.click();
    await page.getByRole("heading", { level: 1, name: "Cuesta" }).waitFor();
    // 1.001e-3 degrees of longitude by 0.8e-3 of latitude near 38.6 S: 86.9 m by 88.8 m by hand, 0.77 ha.
    await page.getByText(/0\.7[67]\d* ha/).first().waitFor();
    await shot(page, "ground-walked-phone");
    expect(await faultsOf(page)).toEqual([]);
    check();
    await context.close();
  });
});
