// A real Chromium for the journeys: phone and desk sizes, screenshots kept, faults of the page never missed.
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from "playwright-core";

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));

export const launch = (): Promise<Browser> => chromium.launch({ executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium", headless: true, args: flags });

export const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2, locale: "en-US" };
export const desk: BrowserContextOptions = { viewport: { width: 1280, height: 900 }, locale: "en-US" };

/** A page whose uncaught faults and console errors end the test. Call `check` at the end. */
export async function openPage(context: BrowserContext, url: string): Promise<{ page: Page; check: () => void }> {
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" && !/Failed to load resource|net::ERR/.test(message.text())) faults.push(message.text());
  });
  await page.goto(url);
  await page.locator(".rooms").waitFor();
  return {
    page,
    check: () => {
      if (faults.length > 0) throw new Error(`the page reported: ${faults.join("\n")}`);
    },
  };
}

/** Keeps a picture of the whole page under out/screens. */
export async function shot(page: Page, name: string): Promise<void> {
  mkdirSync(shots, { recursive: true });
  // The bar that sticks to the glass would lie across a picture of the whole page.
  const stick = (position: string) => page.evaluate((at) => document.querySelectorAll<HTMLElement>(".rooms, .save-bar").forEach((bar) => (bar.style.position = at)), position);
  await stick("static");
  await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true, scale: "css" });
  await stick("");
}
