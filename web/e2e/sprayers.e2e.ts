// The room Sprayers as a person goes through it. Figures: stories 1 and 15 of the product, worked by hand.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
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
