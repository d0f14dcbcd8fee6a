// The room Sprayers when things go wrong: a phone gone black, figures that cannot be, old figures, foreign notebooks.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser } from "playwright-core";
import { phone, launch } from "./browser";
import { demo, demoNotebook } from "./demo_job";
import { faultsOf } from "./looks";
import { bringIn, given, idOf, type Given } from "./notebook_of";
import { addSprayer, atResult, begin, catches, choose, field, fill, follow, look, next, press, reload, startCalibration } from "./sprayer_acts";
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

describe("a phone that goes black", () => {
  it("keeps every step of a calibration, the running pass and the running catch", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Rig", "Boomless");
    await reload(page);
    await startCalibration(page, /^Timed course/, "28");
    await reload(page);
    expect(await field(page, /^Pressure at the tips/).and(page.locator("input")).inputValue()).toBe("28");
    await next(page);
    await fill(page, /^Effective width/, "26");
    await fill(page, "Length between the stakes", "176");
    await reload(page);
    expect(await field(page, "Length between the stakes").inputValue()).toBe("176");
    await next(page);
    await page.locator(".watch").click();
    await look(page, "watch-phone");
    await reload(page);
    await page.locator(".watch.on").waitFor();
    await page.locator(".watch-time", { hasText: /^[1-9]\.\d s$/ }).waitFor();
    await page.locator(".watch").click();
    const time = await page.locator(".passes strong").innerText();
    expect(time).toMatch(/^\d+\.\d s$/);
    await reload(page);
    expect(await page.locator(".passes strong").innerText()).toBe(time);
    await next(page);
    await choose(page, "other seconds");
    await fill(page, "Seconds of each catch", "2");
    await page.locator(".watch").click();
    await page.locator(".countdown.ready").waitFor();
    await look(page, "ready-phone");
    await reload(page);
    await page.locator(".countdown.over").waitFor();
    await page.getByText("Stop. Take the jug away.").waitFor();
    await catches(page, ["40", "41"]);
    await reload(page);
    expect(await page.locator(".place.filled").allInnerTexts()).toEqual([expect.stringContaining("40"), expect.stringContaining("41")]);
    check();
    await context.close();
  });
});

describe("what cannot be", () => {
  it("is refused at its own field, and an untouched form shows nothing red", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Wrong figures", "Boomless");
    await startCalibration(page, /^Timed course/);
    for (const step of ["Begin", "Course", "Time", "Catch", "Result"]) {
      await page.locator(".rail a", { hasText: step }).click();
      expect(await page.locator(".error").count(), step).toBe(0);
    }
    await page.getByText("Still needed").waitFor();
    await look(page, "nothing-phone");
    await page.locator(".rail a", { hasText: "Begin" }).click();
    await fill(page, /^Pressure at the tips/, "-3");
    expect(await page.locator(".field.wrong .error").innerText()).toContain("below zero");
    await fill(page, /^Pressure at the tips/, "");
    await next(page);
    await fill(page, /^Effective width/, "0");
    expect(await page.locator(".field.wrong").innerText()).toMatch(/Effective width[\s\S]*0 ft/);
    await fill(page, /^Effective width/, "26");
    await fill(page, "Length between the stakes", "176");
    await next(page);
    await fill(page, /^Or type a time/, "0");
    await press(page, "Add this time");
    expect(await page.locator(".field.wrong .error").innerText()).toContain("above zero");
    expect(await page.locator(".passes li").count()).toBe(0);
    await fill(page, /^Or type a time/, "31.5");
    await press(page, "Add this time");
    await next(page);
    await catches(page, ["40", "0"]);
    expect(await page.locator(".entry-keys .error").innerText()).toMatch(/0 fl oz/);
    expect(await page.locator(".place.faulty").innerText()).toContain("Catch 2");
    await look(page, "wrong-phone");
    check();
    await context.close();
  });
});

describe("a figure that grew old", () => {
  it("is flagged by its age and after new tips, and a retired sprayer steps aside", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await page.clock.setFixedTime(new Date("2031-05-14T09:00:00"));
    await addSprayer(page, "Old figure", "Handgun");
    await startCalibration(page, /^Refill/);
    await next(page);
    await choose(page, "an area");
    await field(page, "Area").and(page.locator("input")).fill("0.25");
    await next(page);
    await fill(page, /^Water to fill/, "3.2");
    await atResult(page);
    await press(page, "Save this calibration");
    await page.clock.setFixedTime(new Date("2031-05-17T09:00:00"));
    await follow(page, "Back");
    expect(await page.locator(".thing").innerText()).toMatch(/Calibrated 3 days ago/);
    expect(await page.locator(".thing .flag").count()).toBe(0);
    await follow(page, /^Old figure/);
    await follow(page, "Change what is known");
    await page.getByLabel("Ask for a new calibration").selectOption("30");
    await page.locator(".save-bar").getByRole("button", { name: "Save" }).click();
    await page.clock.setFixedTime(new Date("2031-06-20T09:00:00"));
    await follow(page, "Back");
    expect(await page.locator(".thing .flag").innerText()).toContain("Calibrate again");
    await look(page, "due-phone");
    await follow(page, /^Old figure/);
    await press(page, "New tips were put in today");
    await page.getByText("Tips were changed after the last calibration").waitFor();
    await press(page, "Undo");
    await page.getByText("older than the 30 days").waitFor();
    await press(page, "Retire this sprayer");
    await page.getByText("Its calibrations stay in the notebook").waitFor();
    await follow(page, "Back");
    await page.getByRole("heading", { name: "Retired sprayers" }).waitFor();
    check();
    await context.close();
  });

  it("throws a calibration away only when asked twice", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await addSprayer(page, "Careful", "Backpack");
    await startCalibration(page, /^Timed plot/, "30");
    await press(page, "Throw this calibration away");
    await press(page, "Cancel");
    expect(await field(page, /^Pressure at the tips/).and(page.locator("input")).inputValue()).toBe("30");
    await press(page, "Throw this calibration away");
    await look(page, "throw-away-phone");
    await press(page, "Throw this calibration away");
    expect(await field(page, /^Pressure at the tips/).and(page.locator("input")).inputValue()).toBe("");
    check();
    await context.close();
  });
});

describe("a notebook from another phone", () => {
  it("shows the demo rig with its calibration and its tips of that day", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    await bringIn(page, host.url, await demoNotebook());
    await page.goto(`${host.url}#/sprayers/${demo.rig}`);
    await page.getByRole("heading", { level: 1, name: "Boom rig" }).waitFor();
    await page.locator(".figure.main").waitFor();
    await page.getByText("1 tip out of limits").or(page.getByText("2 tips out of limits")).first().waitFor();
    await look(page, "demo-phone");
    await follow(page, "Calibrate");
    await page.getByLabel("Who drives or walks").selectOption({ label: "Ada Quill" });
    check();
    await context.close();
  });

  it("opens every screen of sprayers that lack nearly every field", async () => {
    const { page, check, context } = await begin(host.url, browser, phone);
    const bare = (kind: Given["kind"], number: number, body: object): Given => given(kind, number, body as never);
    await bringIn(page, host.url, [
      bare("sprayer", 501, {}),
      bare("sprayer", 502, { name: "Bare" }),
      bare("calibration", 503, { sprayer: idOf(502) }),
      bare("calibration", 504, { sprayer: idOf(502), answer: { output: { value: 12.5, unit: "gal/ac" } }, operation: "calibrate" }),
      bare("calibration", 505, { sprayer: idOf(502), request: {}, answer: { output: { value: 12.5, unit: "gal/ac" } }, operation: "calibrate", on: "2031-05-14" }),
      bare("tip_set", 506, { sprayer: idOf(502) }),
      bare("tip_set", 507, { sprayer: idOf(502), operation: "tip-check", answer: {} }),
    ]);
    await page.goto(`${host.url}#/sprayers`);
    expect(await page.locator(".thing").count()).toBe(2);
    const ids = [501, 502].map(idOf);
    const places = ["", "/change", "/calibrate", "/calibrate/course", "/calibrate/time", "/calibrate/catch", "/calibrate/result", "/tips", "/target", "/history", `/history/${idOf(503)}`, `/history/${idOf(505)}`, `/history/${idOf(506)}`, `/history/${idOf(999)}`, "/nowhere"];
    for (const id of ids) {
      for (const place of places) {
        await page.goto(`${host.url}#/sprayers/${id}${place}`);
        await page.locator("h1").waitFor();
        expect(await faultsOf(page), place).toEqual([]);
      }
    }
    await page.goto(`${host.url}#/sprayers/${idOf(999)}`);
    await page.getByText("This is not in the notebook").waitFor();
    check();
    await context.close();
  });
});
