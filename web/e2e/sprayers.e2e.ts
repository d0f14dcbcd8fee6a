// The room Sprayers as a person goes through it. Figures: stories 1 and 15 of the product, worked by hand.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { faultsOf } from "./looks";
import { demo, demoNotebook } from "./demo_job";
import { bringIn, given, idOf, type Given } from "./notebook_of";
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

const sizes = { phone, desk };

type Begun = { page: Page; check: () => void; context: BrowserContext };

/** A fresh phone whose owner has said who writes, unless the settings say otherwise. */
async function begin(size: BrowserContextOptions, settings: Record<string, unknown> = { author: "Ana Crews" }): Promise<Begun> {
  const context = await browser.newContext(size);
  await context.addInitScript((kept) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", kept);
  }, JSON.stringify(settings));
  const { page, check } = await openPage(context, `${host.url}#/sprayers`);
  return { page, check, context };
}

async function look(page: Page, name: string): Promise<void> {
  await shot(page, `sprayers-${name}`);
  expect(await faultsOf(page), name).toEqual([]);
}

const field = (page: Page, label: string | RegExp) => page.getByLabel(label, { exact: typeof label === "string" });
const fill = async (page: Page, label: string | RegExp, text: string) => field(page, label).and(page.locator("input, textarea")).fill(text);
const choose = async (page: Page, label: string | RegExp) => page.getByRole("radio", { name: label }).check({ force: true });
const press = async (page: Page, name: string | RegExp) => page.getByRole("button", { name }).first().click();
const follow = async (page: Page, name: string | RegExp) => page.getByRole("link", { name }).first().click();
const next = async (page: Page) => page.locator(".save-bar a.main").click();

async function nameAsked(page: Page, who = "Ana Crews"): Promise<void> {
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Name").fill(who);
  await dialog.getByRole("button", { name: "Save" }).click();
}

async function addSprayer(page: Page, name: string, sort: string, amounts: Record<string, string> = {}, asksWho = false): Promise<void> {
  await follow(page, "Add a sprayer");
  await fill(page, "Name", name);
  await choose(page, new RegExp(`^${sort}`));
  for (const [label, text] of Object.entries(amounts)) await field(page, new RegExp(`^${label}`)).and(page.locator("input")).first().fill(text);
  await page.locator(".save-bar").getByRole("button", { name: "Save" }).click();
  if (asksWho) await nameAsked(page);
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

/** Reads the forms off the disk: a read comes after the writes asked for before it. */
const onDisk = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("swathbook");
        opening.onerror = () => reject(new Error("no database"));
        opening.onsuccess = () => {
          const reading = opening.result.transaction("forms").objectStore("forms").getAll();
          reading.onsuccess = () => {
            resolve(JSON.stringify(reading.result));
            opening.result.close();
          };
        };
      }),
  );

/** Reloads as a phone does that went black: after the last key press reached the disk. */
async function reload(page: Page): Promise<void> {
  await onDisk(page);
  await page.reload();
  await page.locator(".rooms").waitFor();
}

const figure = (page: Page, label: string) => page.locator(".figure", { has: page.locator(".figure-label", { hasText: new RegExp(`^${label}$`) }) }).first();

describe("story 1: a loaned boomless rig", () => {
  for (const [name, size] of Object.entries(sizes)) {
    it(`gives 3.81 mph and 12.99 gal/ac, and the sticker's +21 %, on a ${name}`, async () => {
      const { page, check, context } = await begin(size, {});
      await look(page, `empty-${name}`);
      await follow(page, "Add a sprayer");
      await look(page, `new-${name}`);
      await page.goto(`${host.url}#/sprayers`);
      await addSprayer(page, "Loaned rig", "Boomless", { "Effective width": "26", "Tank, usable": "60", "Number of tips": "3" }, true);
      await look(page, `one-${name}`);
      await follow(page, "Calibrate");
      await look(page, `begin-${name}`);
      await choose(page, /^Flow and speed/);
      await fill(page, /^Pressure at the tips/, "30");
      await next(page);
      await look(page, `course-${name}`);
      await fill(page, /^Speed you will drive/, "4");
      expect(await page.locator(".course-plan").innerText()).toContain("131 ft");
      await fill(page, "Length between the stakes", "176");
      await look(page, `course-laid-${name}`);
      await next(page);
      await fill(page, /^Or type a time/, "31.5");
      await press(page, "Add this time");
      expect(await figure(page, "Speed").innerText()).toContain("3.81");
      await look(page, `time-${name}`);
      await next(page);
      await choose(page, "a flow meter");
      await fill(page, "Flow of all tips together", "2.60");
      await look(page, `meter-${name}`);
      await next(page);
      expect(await figure(page, "Output").innerText()).toContain("12.99");
      await page.getByText("Compare with a sticker").click();
      await fill(page, /^Width of the sticker/, "30");
      await fill(page, /^Speed of the sticker/, "4");
      expect(await figure(page, "The sticker's output").innerText()).toContain("10.73");
      expect(await figure(page, "Product delivered against the sticker").innerText()).toMatch(/21\.\d+ %/);
      expect(await page.locator(".budget li").first().innerText()).toContain("the width");
      await look(page, `result-${name}`);
      await press(page, "Save this calibration");
      await page.getByRole("heading", { level: 1, name: "Loaned rig" }).waitFor();
      expect(await figure(page, "Output").innerText()).toContain("12.99");
      await look(page, `saved-${name}`);
      await follow(page, "Back");
      expect(await page.locator(".thing").innerText()).toMatch(/Calibrated today[\s\S]*12\.99/);
      await look(page, `list-${name}`);
      check();
      await context.close();
    });
  }
});

// .405 .410 .398 .440 .452 .410 .402 .365 .415 gal/min against .400.
const story15 = ["405", "410", "398", "440", "452", "410", "402", "365", "415"].map((digits) => `.${digits}`);

describe("story 15: worn and mixed tips", () => {
  for (const [name, size] of Object.entries(sizes)) {
    it(`names tip 5 as worn, 4 at the limit, 8 as clogged, by the keys on the screen, on a ${name}`, async () => {
      const { page, check, context } = await begin(size);
      await addSprayer(page, "Nine tips", "Boom several", { "Number of tips": "9", "Rated flow of one tip": "0.400", "Pressure of the rated flow": "40", "Usual pressure": "40" });
      await follow(page, "Check tips");
      await choose(page, "flow of each tip");
      for (const [index, digits] of story15.entries()) {
        for (const key of digits) await page.locator(".keypad").getByRole("button", { name: key, exact: true }).click();
        if (index < 8) await press(page, "Next tip");
        if (index === 2) await reload(page);
      }
      expect(await figure(page, "Mean of the tips").innerText()).toContain("0.4108");
      expect(await figure(page, "Mean against the rating").innerText()).toContain("2.694");
      expect(await figure(page, "Spread of the tips \\(CV\\)").innerText()).toContain("6.05");
      const lines = page.locator(".tip-line");
      expect(await lines.nth(3).innerText()).toMatch(/\+10 %\s+at the limit/);
      expect(await lines.nth(4).innerText()).toMatch(/\+13 %\s+too high: worn/);
      expect(await lines.nth(7).innerText()).toMatch(/-8\.8 %\s+too low/);
      expect(await page.locator(".todo").innerText()).toMatch(/Replace\s+tip 5[\s\S]*Clean and catch again\s+tip 8/);
      await look(page, `tips-${name}`);
      await press(page, "Save this tip check");
      await page.getByText("2 tips out of limits").waitFor();
      check();
      await context.close();
    });
  }
});

/** Starts a calibration of a sprayer just added, by the way named. */
async function startCalibration(page: Page, way: RegExp, pressure?: string): Promise<void> {
  await follow(page, "Calibrate");
  await choose(page, way);
  if (pressure) await fill(page, /^Pressure at the tips/, pressure);
}

async function addTimes(page: Page, times: string[]): Promise<void> {
  for (const time of times) {
    await fill(page, /^Or type a time/, time);
    await press(page, "Add this time");
  }
}

/** Amounts by the keyboard: the box of the place, Enter to the next. */
async function catches(page: Page, amounts: string[]): Promise<void> {
  for (const [index, amount] of amounts.entries()) {
    await page.locator(".entry-line input").fill(amount);
    if (index < amounts.length - 1) await page.locator(".entry-line input").press("Enter");
  }
}

const atResult = async (page: Page): Promise<void> => page.locator(".rail a").last().click();

describe("every sort of sprayer", () => {
  // 16 fl oz of one tip at 20 in on 204.2 ft: width x length is 1/128 ac, so ounces are gal/ac (ounce method).
  it("boom, tip by tip, on the course that makes ounces gal/ac: 16 of them are 16 gal/ac", async () => {
    const { page, check, context } = await begin(phone);
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
    const { page, check, context } = await begin(phone);
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
    const { page, check, context } = await begin(phone);
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
    const { page, check, context } = await begin(phone);
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

describe("the trap of the course", () => {
  it("shows ounces read as gallons on a tenfold course, and saves only when it was read", async () => {
    const { page, check, context } = await begin(phone);
    await addSprayer(page, "Cluster", "Boomless", { "Effective width": "30" });
    await startCalibration(page, /^Timed course/);
    await next(page);
    await fill(page, "Length between the stakes", "113.4");
    await next(page);
    await addTimes(page, ["20", "20.4"]);
    await next(page);
    await catches(page, ["130", "131"]);
    await atResult(page);
    await page.getByText("Compare with a sticker").click();
    await fill(page, /^Output believed so far/, "130.5");
    const banner = page.getByRole("alert");
    expect(await banner.innerText()).toMatch(/fluid ounces caught were read as gal\/ac/);
    const save = page.getByRole("button", { name: "Save this calibration" });
    expect(await save.isDisabled()).toBe(true);
    await look(page, "trap-phone");
    await banner.getByRole("checkbox").check({ force: true });
    await save.click();
    await page.getByRole("heading", { level: 1, name: "Cluster" }).waitFor();
    expect(await figure(page, "Output").innerText()).toContain("13.05");
    check();
    await context.close();
  });
});

describe("a phone that goes black", () => {
  it("keeps every step of a calibration, the running pass and the running catch", async () => {
    const { page, check, context } = await begin(phone);
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

describe("a figure that grew old", () => {
  it("is flagged by its age and after new tips, and a retired sprayer steps aside", async () => {
    const { page, check, context } = await begin(phone);
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
    const { page, check, context } = await begin(phone);
    await addSprayer(page, "Careful", "Backpack");
    await startCalibration(page, /^Timed plot/, "30");
    await press(page, "Throw this calibration away");
    await press(page, "No");
    expect(await field(page, /^Pressure at the tips/).and(page.locator("input")).inputValue()).toBe("30");
    await press(page, "Throw this calibration away");
    await press(page, "Yes, throw away");
    expect(await field(page, /^Pressure at the tips/).and(page.locator("input")).inputValue()).toBe("");
    check();
    await context.close();
  });
});

describe("without a mouse", () => {
  it("calibrates with the keyboard alone", async () => {
    const { page, check, context } = await begin(desk);
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

describe("what would hit the target", () => {
  it("tells speed, pressure and tip from the last calibration", async () => {
    const { page, check, context } = await begin(phone);
    await addSprayer(page, "Loaned rig", "Boomless", { "Effective width": "26", "Number of tips": "3" });
    await follow(page, "What would hit my target?");
    await look(page, "target-none-phone");
    await follow(page, "Back");
    await startCalibration(page, /^Flow and speed/, "30");
    await next(page);
    await fill(page, "Length between the stakes", "176");
    await next(page);
    await addTimes(page, ["31.5"]);
    await next(page);
    await choose(page, "a flow meter");
    await fill(page, "Flow of all tips together", "2.60");
    await next(page);
    await press(page, "Save this calibration");
    await follow(page, "What would hit my target?");
    await fill(page, "Output you want", "15");
    // 12.99375 / 15 of 3.8095 mph is 3.30 mph; (15 / 12.99375)^2 of 30 psi is 39.98 psi; 15 x 3.8095 x 26 / 495 / 3 = 1.0005, written 1 gal/min
    expect(await figure(page, "By speed alone").innerText()).toContain("3.3 mph");
    expect(await figure(page, "By pressure alone").innerText()).toContain("39.98");
    expect(await figure(page, "By other tips").innerText()).toMatch(/\n1 gal\/min/);
    // Half the distance each at 2.5 and 5 mph: the harmonic mean speed is 3.33 mph, the rate 12.99375 x 3.8095 / 3.3333 = 14.85.
    await fill(page, /^Slowest you can drive/, "2.5");
    await fill(page, /^Fastest the ground allows/, "5");
    expect(await figure(page, "At 2.5 mph").innerText()).toContain("19.8");
    expect(await figure(page, "At 5 mph").innerText()).toContain("9.9");
    expect(await figure(page, "Mean over equal distances").innerText()).toContain("14.85");
    expect(await figure(page, "Speed to reckon with then").innerText()).toContain("3.333");
    await fill(page, /^Highest pressure/, "35");
    await fill(page, /^Lowest pressure/, "15");
    expect(await page.locator(".window.above").innerText()).toBe("over your limits");
    await page.getByText("Droplet classes of these tips").click();
    await press(page, "Add a class");
    await press(page, "Add a class");
    for (const [index, [from, to, name]] of [
      ["15", "32", "C"],
      ["32.5", "60", "M"],
    ].entries()) {
      const row = page.locator(".class-row").nth(index);
      await row.getByLabel("From pressure", { exact: true }).fill(from ?? "");
      await row.getByLabel("to pressure", { exact: true }).fill(to ?? "");
      await row.getByLabel("class", { exact: true }).selectOption(name ?? "");
    }
    await page.getByLabel("Droplets the label asks for").selectOption("coarse or coarser");
    expect(await page.locator(".droplets").innerText()).toMatch(/coarse now, medium then\. not what the label asks for/);
    await look(page, "target-phone");
    check();
    await context.close();
  });
});

describe("wear over a season", () => {
  it("says it cannot tell from two checks, and the limit from four", async () => {
    const { page, check, context } = await begin(phone);
    await addSprayer(page, "Worn rig", "Boom several", { "Number of tips": "2", "Rated flow of one tip": "0.400", "Pressure of the rated flow": "40", "Usual pressure": "40" });
    // A straight line by construction: 0.400 new and 0.010 gal/min (2.5 %) more each 100 ac reach +10 % at 400 ac.
    const checks = [
      ["2031-04-01", "50", ".405", ".405"],
      ["2031-05-01", "100", ".410", ".410"],
      ["2031-06-01", "200", ".420", ".420"],
      ["2031-07-01", "300", ".430", ".430"],
    ] as const;
    for (const [index, [day, acres, first, second]] of checks.entries()) {
      await page.clock.setFixedTime(new Date(`${day}T12:00:00`));
      await follow(page, "Check tips");
      await choose(page, "flow of each tip");
      await catches(page, [first, second]);
      await fill(page, /^Ground these tips have done/, acres);
      await press(page, "Save this tip check");
      await page.getByText("Last tip check").waitFor();
      if (index === 1) {
        await follow(page, "History and wear");
        await page.getByText(/^Cannot tell yet/).waitFor();
        await look(page, "history-early-phone");
        await follow(page, "Back");
      }
    }
    await follow(page, "History and wear");
    expect(await figure(page, "Over new, last time").innerText()).toContain("7.5 %");
    expect(await figure(page, "Reaches the limit after").innerText()).toMatch(/\n400 ac/);
    expect(await page.locator(".chart circle").count()).toBe(4);
    await look(page, "history-phone");
    await page.locator(".thing").first().click();
    await page.getByText("It is never worked out again").waitFor();
    expect(await figure(page, "Mean of the tips").innerText()).toContain("0.43");
    await look(page, "entry-phone");
    check();
    await context.close();
  });
});

describe("in Spanish, metric, with gloves", () => {
  it("takes a decimal comma: 240 L/ha from ten tips of 0,6 L in 36 s over 5 m", async () => {
    const { page, check, context } = await begin({ ...phone, locale: "es-MX" }, { author: "Ana", language: "es", units: "metric", gloves: true });
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

describe("a notebook from another phone", () => {
  it("shows the demo rig with its calibration and its tips of that day", async () => {
    const { page, check, context } = await begin(phone);
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
    const { page, check, context } = await begin(phone);
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
