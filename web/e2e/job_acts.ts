// What the journeys of the Jobs room share: a fresh phone, amounts typed, figures read.
import { expect } from "vitest";
import type { BrowserContextOptions, Locator, Page } from "playwright-core";
import { launch, openPage, shot } from "./browser";
import { faultsOf } from "./looks";
import { serveDist } from "./static_server";

type Settings = Partial<{ units: "us" | "metric"; language: "en" | "es"; gloves: boolean; author: string }>;

/** A browser with the built app behind it, for one file of journeys. */
export async function jobsHost() {
  const host = await serveDist();
  const browser = await launch();
  return { url: host.url, browser, close: async () => (await browser.close(), await host.close()) };
}
export type JobsHost = Awaited<ReturnType<typeof jobsHost>>;

/** A fresh phone or desk in the room. */
export async function open({ url, browser }: JobsHost, size: BrowserContextOptions, set: Settings = {}) {
  const context = await browser.newContext(size);
  await context.addInitScript((kept) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", kept);
  }, JSON.stringify({ units: "us", language: "en", gloves: false, sound: false, author: "Ada Quill", ...set }));
  const opened = await openPage(context, `${url}#/jobs`);
  return { ...opened, end: async () => (opened.check(), await context.close()) };
}

type Place = Page | Locator;
export const box = (place: Place, name: string | RegExp) => place.getByRole("textbox", { name });

/** Types an amount and chooses its unit, as a person does. */
export async function amount(place: Place, name: string, text: string): Promise<void> {
  const at = text.indexOf(" ");
  await box(place, name).first().fill(text.slice(0, at));
  const unit = place.getByLabel(new RegExp(`^(Unit of|Unidad de) ${name}`)).first();
  if ((await unit.count()) > 0) await unit.selectOption(text.slice(at + 1));
}

export const press = (place: Place, name: string | RegExp) => place.getByRole("button", { name }).first().click();

/** A job by its guided form; ends on its page. */
export async function newJob(page: Page, { name, work = "Broadcast", area }: { name: string; work?: string; area: string }): Promise<void> {
  await page.evaluate(() => {
    location.hash = "#/jobs/new";
  });
  await box(page, /^Name of the job/).fill(name);
  await page.getByRole("radio", { name: new RegExp(`^${work}`) }).check();
  await press(page, "Next");
  await amount(page, "Net area", area);
  await page.reload(); // each form is as it was left
  await expect.poll(() => box(page, /^Net area/).inputValue()).toBe(area.split(" ")[0]);
  await press(page, "Next");
  await press(page, "Save the job");
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

interface Product {
  name: string;
  strength?: string;
  rate?: string;
  dry?: boolean;
}

/** A product typed in the middle of the plan, its card made on the spot. */
export async function product(page: Page, number: number, { name, strength, rate, dry }: Product): Promise<Locator> {
  await press(page, /^Add (a|another) product/);
  const group = page.getByRole("group", { name: `Product ${number}` });
  if ((await box(group, "Name on the label").count()) === 0) await press(group, "Type a new card here");
  await box(group, "Name on the label").fill(name);
  if (dry) await group.getByRole("radio", { name: "Weighed" }).check();
  if (strength) {
    await box(group, /^Active ingredient/).fill("fictionate acid");
    await amount(group, "Strength", strength);
  }
  await press(group, "Save this card and use it");
  await group.getByRole("combobox", { name: "Label card" }).waitFor();
  if (rate) await amount(group, "Rate", rate);
  return group;
}

export const figure = (page: Page, label: string) => page.locator(".figure-press").filter({ has: page.locator(".figure-label").getByText(label, { exact: true }) }).first();
export async function reads(page: Page, label: string, text: string): Promise<void> {
  await expect.poll(() => figure(page, label).innerText().catch(() => ""), { timeout: 5000 }).toContain(text);
}

export async function look(page: Page, name: string): Promise<void> {
  await shot(page, `jobs-${name}`);
  expect(await faultsOf(page)).toEqual([]);
}
