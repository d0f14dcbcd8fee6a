// What a person does in the room Sprayers, for its journeys.
import { expect } from "vitest";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { desk, openPage, phone, shot } from "./browser";
import { faultsOf } from "./looks";

export const sizes = { phone, desk };

export type Begun = { page: Page; check: () => void; context: BrowserContext };

/** A fresh phone whose owner has said who writes, unless the settings say otherwise. */
export async function begin(url: string, browser: Browser, size: BrowserContextOptions, settings: Record<string, unknown> = { author: "Ana Crews" }): Promise<Begun> {
  const context = await browser.newContext(size);
  await context.addInitScript((kept) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", kept);
  }, JSON.stringify(settings));
  const { page, check } = await openPage(context, `${url}#/sprayers`);
  return { page, check, context };
}

export async function look(page: Page, name: string): Promise<void> {
  await shot(page, `sprayers-${name}`);
  expect(await faultsOf(page), name).toEqual([]);
}

export const field = (page: Page, label: string | RegExp) => page.getByLabel(label, { exact: typeof label === "string" });
export const fill = async (page: Page, label: string | RegExp, text: string) => field(page, label).and(page.locator("input, textarea")).fill(text);
export const choose = async (page: Page, label: string | RegExp) => page.getByRole("radio", { name: label }).check({ force: true });
export const press = async (page: Page, name: string | RegExp) => page.getByRole("button", { name }).first().click();
export const follow = async (page: Page, name: string | RegExp) => page.getByRole("link", { name }).first().click();
export const next = async (page: Page) => page.locator(".save-bar a.main").click();

export async function nameAsked(page: Page, who = "Ana Crews"): Promise<void> {
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Name").fill(who);
  await dialog.getByRole("button", { name: "Save" }).click();
}

export async function addSprayer(page: Page, name: string, sort: string, amounts: Record<string, string> = {}, asksWho = false): Promise<void> {
  await follow(page, "Add a sprayer");
  await fill(page, "Name", name);
  await choose(page, new RegExp(`^${sort}`));
  for (const [label, text] of Object.entries(amounts)) await field(page, new RegExp(`^${label}`)).and(page.locator("input")).first().fill(text);
  await page.locator(".save-bar").getByRole("button", { name: "Save" }).click();
  if (asksWho) await nameAsked(page);
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

/** Reads the forms off the disk: a read comes after the writes asked for before it. */
export const onDisk = (page: Page): Promise<string> =>
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
export async function reload(page: Page): Promise<void> {
  await onDisk(page);
  await page.reload();
  await page.locator("main h1").waitFor(); // the room is fetched after the frame stands
}

export const figure = (page: Page, label: string) => page.locator(".figure", { has: page.locator(".figure-label", { hasText: new RegExp(`^${label}$`) }) }).first();

/** Starts a calibration of a sprayer just added, by the way named. */
export async function startCalibration(page: Page, way: RegExp, pressure?: string): Promise<void> {
  await follow(page, "Calibrate");
  await choose(page, way);
  if (pressure) await fill(page, /^Pressure at the tips/, pressure);
}

export async function addTimes(page: Page, times: string[]): Promise<void> {
  for (const time of times) {
    await fill(page, /^Or type a time/, time);
    await press(page, "Add this time");
  }
}

/** Amounts by the keyboard: the box of the place, Enter to the next. */
export async function catches(page: Page, amounts: string[]): Promise<void> {
  for (const [index, amount] of amounts.entries()) {
    await page.locator(".entry-line input").fill(amount);
    if (index < amounts.length - 1) await page.locator(".entry-line input").press("Enter");
  }
}

export const atResult = async (page: Page): Promise<void> => page.locator(".rail a").last().click();
