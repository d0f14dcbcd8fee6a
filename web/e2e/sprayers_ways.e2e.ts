// The room Sprayers: every sort of sprayer and every sort of person.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser } from "playwright-core";
import { desk, phone, launch } from "./browser";
import { addSprayer, addTimes, atResult, begin, catches, choose, field, figure, fill, follow, look, next, press, startCalibration } from "./sprayer_acts";
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

describe("every sort of sprayer", () => {
  // 16 fl oz of one tip at 20 in on 204.2 ft: width x length is 1/128 ac, so ounces are gal/ac (ounce method).
  it("boom, tip by tip, on the course that makes ounces gal/ac: 16 of them are 16 gal/ac", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Four tips", "Boom several", { "Number of tips": "4", "Distance between tips": "20", "Rated flow of one tip": "0.25" });
    await startCalibration(page, /^Timed course/);
    await next(page);
    expect(await page.locator(".course-plan").innerText()).toMatch(/204 ft[\s\S]*fl oz caught = gal\/ac/);
    await look(page, "boom-course-phone");
    await fill(page, "Length between the stakes", "204.19");
    await next(page);
    await addTimes(page, ["30", "30.2", "29.8"]);
    await next(page);
    await look(page, "catch-phone");
    await catches(page, ["16", "16"]);
    await press(page, "Next tip");
    await press(page, "Same as before");
    await press(page, "Same as before");
    await page.locator(".entry-line input").fill("16");
    await atResult(page);
    expect(await figure(page, "Output").innerText()).toMatch(/\n16 gal\/ac/);
    expect(await page.locator(".tip-line").count()).toBe(4);
    check();
    await context.close();
  });

  // Two tips over a 14 in band: 31 fl oz on 14 in x 200 ft; the field acre counts the 30 in rows.
  it("band: per area under the bands and of the whole field", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Rows", "Band sprayer", { "Width of one band": "14", "Distance between rows": "30", "Tips on one band": "2" });
    await startCalibration(page, /^Timed course/);
    await choose(page, /^All tips together/);
    await next(page);
    await fill(page, "Length between the stakes", "200");
    await next(page);
    await addTimes(page, ["30"]);
    await next(page);
    await catches(page, ["31"]);
    await atResult(page);
    // 31/128 gal x 43560 / (14/12 x 200) = 45.21; times 14/30 = 21.10
    expect(await figure(page, "Per area under the bands").innerText()).toContain("45.21");
    expect(await figure(page, "Per area of the whole field").innerText()).toContain("21.1");
    check();
    await context.close();
  });

  it("backpack: a timed plot with repeats, 22 fl oz on 340 ft2 is 22.02 gal/ac", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Blue backpack", "Backpack");
    await startCalibration(page, /^Timed plot/);
    await next(page);
    await choose(page, "an area");
    await field(page, "Area").and(page.locator("input")).fill("340");
    await page.getByLabel("Unit of Area").selectOption("ft2");
    await look(page, "plot-phone");
    await next(page);
    await addTimes(page, ["30", "31", "29"]);
    await next(page);
    await catches(page, ["22", "22.5", "21.5"]);
    await atResult(page);
    // 22/128 gal x 43560 / 340 = 22.02
    expect(await figure(page, "Output").innerText()).toContain("22.02");
    expect(await page.locator(".repeats").innerText()).toMatch(/Not there yet[\s\S]*more pass/);
    await look(page, "repeats-phone");
    await choose(page, "± 15 %");
    expect(await page.locator(".repeats").innerText()).toContain("Good enough");
    check();
    await context.close();
  });

  it("handgun: refill of a known area, 3.2 gal on a quarter acre is 12.8 gal/ac", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Hose reel", "Handgun", { "Tank, usable": "60" });
    await startCalibration(page, /^Refill/);
    await next(page);
    await choose(page, "an area");
    await field(page, "Area").and(page.locator("input")).fill("0.25");
    await next(page);
    await fill(page, /^Water to fill/, "3.2");
    await look(page, "refill-phone");
    await atResult(page);
    expect(await figure(page, "Output").innerText()).toContain("12.8");
    expect(await figure(page, "One tank covers").innerText()).toContain("4.688");
    check();
    await context.close();
  });
});

describe("without a mouse", () => {
  it("calibrates with the keyboard alone", async () => {
    const { page, check, context } = await begin(host.url, browser, desk);
    const at = (): Promise<string> => page.evaluate(() => (document.activeElement as HTMLElement | null)?.closest("label, a, button, summary, .field, .entry-keys")?.textContent ?? "");
    /** Tabs on until the focus is on something that says so; the arrows choose within a group. */
    const tabTo = async (words: RegExp, selector = "*"): Promise<void> => {
      for (let presses = 0; presses < 80; presses += 1) {
        await page.keyboard.press("Tab");
        const fits = await page.evaluate((wanted) => document.activeElement?.matches(wanted) === true, selector);
        if (fits && words.test(await at())) return;
      }
      throw new Error(`no way by Tab to ${words}`);
    };
    await tabTo(/^Add a sprayer/);
    await page.keyboard.press("Enter");
    await tabTo(/^Name/);
    await page.keyboard.type("Keys only");
    await tabTo(/^Boom/, "input");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowDown"); // Boomless
    await tabTo(/^Effective width/, "input");
    await page.keyboard.type("26");
    await tabTo(/^Save/, "button");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Keys only" }).waitFor();
    await tabTo(/^Calibrate/, "a");
    await page.keyboard.press("Enter");
    await page.locator(".rail").waitFor();
    await tabTo(/^Next/);
    await page.keyboard.press("Enter");
    await tabTo(/^Length between/, "input");
    await page.keyboard.type("176");
    await tabTo(/^Next/);
    await page.keyboard.press("Enter");
    await tabTo(/^Pass 1/);
    await page.keyboard.press("Space");
    await page.locator(".watch-time", { hasText: /^[1-9]\.\d s$/ }).waitFor();
    await page.keyboard.press("Space");
    await page.locator(".passes li").waitFor();
    await tabTo(/^Remove/);
    await page.keyboard.press("Enter");
    await tabTo(/^Or type a time/, "input");
    await page.keyboard.type("31.5");
    await page.keyboard.press("Enter");
    await page.locator(".passes strong", { hasText: "31.5 s" }).waitFor();
    await tabTo(/^Next/);
    await page.keyboard.press("Enter");
    await page.locator(".entry-line").waitFor();
    await tabTo(/^Catch 1/, ".entry-line input");
    await page.keyboard.type("174.7");
    await page.keyboard.press("Enter");
    await page.keyboard.type("174.7");
    await tabTo(/^Next: Result/);
    await page.keyboard.press("Enter");
    // 2.60 gal/min for 31.5 s is 174.7 fl oz: 174.7/128 x 43560 / (26 x 176) = 12.99
    expect(await figure(page, "Output").innerText()).toContain("12.99");
    // 26 ft x 176 ft is 13.4 times 1/128 acre: ounces read as gallons would be far out, and that is ticked first.
    await tabTo(/^I have read this/, "input");
    await page.keyboard.press("Space");
    await tabTo(/^Save this calibration/);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Keys only" }).waitFor();
    expect(await figure(page, "Output").innerText()).toContain("12.99");
    check();
    await context.close();
  });
});

describe("in Spanish, metric, with gloves", () => {
  it("takes a decimal comma: 240 L/ha from ten tips of 0,6 L in 36 s over 5 m", async () => {
    const { page, check, context } = await begin(host.url, browser, { ...phone, locale: "es-MX" }, { author: "Ana", language: "es", units: "metric", gloves: true });
    await follow(page, "Agregar un equipo");
    await fill(page, "Nombre", "Aguilón prestado");
    await choose(page, /^Aguilón varias/);
    await fill(page, /^Número de boquillas/, "10");
    await fill(page, /^Distancia entre boquillas/, "50");
    await look(page, "es-new-phone");
    await page.locator(".save-bar").getByRole("button", { name: "Guardar" }).click();
    await follow(page, "Calibrar");
    await choose(page, /^Todas juntas/);
    await look(page, "es-begin-phone");
    await next(page);
    await fill(page, "Largo entre las estacas", "50");
    await look(page, "es-course-phone");
    await next(page);
    await fill(page, /^O escriba un tiempo/, "36,0");
    await press(page, "Agregar este tiempo");
    expect(await figure(page, "Velocidad").innerText()).toContain("5 km/h");
    await look(page, "es-time-phone");
    await next(page);
    await page.getByLabel("Se mide en").selectOption("L");
    for (const key of "6,0") await page.locator(".keypad").getByRole("button", { name: key, exact: true }).click();
    await look(page, "es-catch-phone");
    await atResult(page);
    // 600 x 10 L/min / (5 km/h x 5 m) = 240
    expect(await figure(page, "Salida").innerText()).toMatch(/\n240 L\/ha/);
    await look(page, "es-result-phone");
    await press(page, "Guardar esta calibración");
    await page.getByRole("heading", { level: 1, name: "Aguilón prestado" }).waitFor();
    await look(page, "es-saved-phone");
    check();
    await context.close();
  });
});
