// Small acts that several journeys share: a phone of somebody, a sprayer written down.
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { openPage } from "./browser";

export interface Person {
  page: Page;
  context: BrowserContext;
  check: () => void;
}

/** A fresh phone of a person who has said who writes. */
export async function personAt(browser: Browser, url: string, author: string, size: BrowserContextOptions): Promise<Person> {
  const context = await browser.newContext({ ...size, acceptDownloads: true });
  await context.addInitScript((kept) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", kept);
  }, JSON.stringify({ author }));
  return { context, ...(await openPage(context, url)) };
}

export async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
}

/** Writes a sprayer down; resolves when its page stands, which is after its entry is on disk. */
export async function addSprayer(page: Page, name: string): Promise<void> {
  await goTo(page, "#/sprayers");
  await page.getByRole("link", { name: "Add a sprayer" }).first().click();
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByRole("radio").first().check({ force: true });
  await page.locator(".save-bar").getByRole("button", { name: "Save" }).click();
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

export async function sprayers(page: Page): Promise<string[]> {
  await goTo(page, "#/sprayers");
  await page.getByRole("heading", { level: 1, name: "Sprayers" }).waitFor();
  return (await page.locator(".thing strong").allTextContents()).sort();
}

/** The state as page "This phone" shows it: two devices with the same one hold the same. */
export async function stateOf(page: Page): Promise<string> {
  await goTo(page, "#/phone");
  return (await page.locator(".digest").textContent()) ?? "";
}
