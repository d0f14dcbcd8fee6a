// The whole job from an empty notebook to a closed record and its PDF, as one person goes through it: with a
// network, and with the network cut before the first entry. Figures: stories 1 and 5, worked by hand there.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, Page } from "playwright-core";
import { desk, launch, phone } from "./browser";
import { amount, press, product, reads } from "./job_acts";
import { textOfPdf } from "./pdf_text";
import { goTo, personAt } from "./people";
import { addSprayer, addTimes, choose, fill, figure, follow, next } from "./sprayer_acts";
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

const box = (page: Page, name: string) => page.getByRole("textbox", { name: new RegExp(`^${name}`) });

async function calibrate(page: Page): Promise<void> {
  await goTo(page, "#/sprayers");
  await addSprayer(page, "Loaned rig", "Boomless", { "Effective width": "26", "Tank, usable": "47" });
  await follow(page, "Calibrate");
  await choose(page, /^Flow and speed/);
  await fill(page, /^Pressure at the tips/, "30");
  await next(page);
  await fill(page, "Length between the stakes", "176");
  await next(page);
  await addTimes(page, ["31.5"]);
  await next(page);
  await choose(page, "a flow meter");
  await fill(page, "Flow of all tips together", "2.60");
  await next(page);
  expect(await figure(page, "Output").innerText()).toContain("12.99"); // story 1
  await page.locator(".save-bar").getByRole("button", { name: "Save this calibration" }).click();
  await page.getByRole("heading", { level: 1, name: "Loaned rig" }).waitFor();
}

async function plan(page: Page): Promise<void> {
  await goTo(page, "#/jobs/new");
  await box(page, "Name of the job").fill("Heron Flat, brush");
  await page.getByRole("radio", { name: /^Broadcast/ }).check();
  await press(page, "Next");
  await amount(page, "Net area", "7.4 ac");
  await press(page, "Next");
  await press(page, "Save the job");
  await page.getByRole("heading", { level: 1, name: "Heron Flat, brush" }).waitFor();
  await page.getByRole("link", { name: "Plan the loads" }).click();
  await amount(page, "Mix on an area", "18.6 gal/ac");
  await amount(page, "Tank, usable", "47 gal");
  const first = await product(page, 1, { name: "Demoherb 4 SL", strength: "4 lb a.e./gal", rate: "2 qt/ac" });
  await amount(first, "Put on this ground this year", "0 qt/ac");
  await reads(page, "First load", "45.88"); // story 5
  await press(page, "Save the plan");
  await page.getByRole("heading", { name: "The saved plan" }).waitFor();
}

async function spendTheDay(page: Page): Promise<void> {
  await goTo(page, "#/field-day");
  await page.getByRole("link", { name: /Heron Flat, brush/ }).click();
  await page.getByRole("link", { name: "Take a reading" }).click();
  await box(page, "Wind").fill("6");
  await box(page, "Strongest gust").fill("7");
  await page.getByRole("button", { name: /^SW south-west$/ }).click();
  await box(page, "Air temperature").fill("71");
  await box(page, "Relative humidity").fill("62");
  await page.getByRole("checkbox", { name: "I looked, and saw none of these" }).check();
  await page.getByRole("button", { name: "Save the reading" }).click();
  await page.getByText(/^Reading: /).waitFor();
  await page.getByRole("link", { name: "Next load" }).click();
  await page.getByRole("heading", { level: 1, name: "Load 1 of 3" }).waitFor();
  for (const row of await page.locator("label.mix-step").all()) await row.click();
  await page.getByRole("button", { name: /^Mixed/ }).click();
  await page.getByText("Load 1 is in the tank").waitFor();
  await page.reload(); // what was acknowledged is there
  await page.getByText("Load 1 is in the tank").waitFor();
  await page.getByRole("link", { name: "Close the day" }).click();
  await page.getByRole("button", { name: "The job is done" }).click();
  await page.getByText("This job is done.").waitFor();
}

async function record(page: Page): Promise<string> {
  await page.getByRole("link", { name: "Write the record" }).click();
  await page.getByRole("heading", { level: 1, name: /Record of Heron Flat/ }).waitFor();
  expect(await page.getByLabel("Product / brand name", { exact: true }).inputValue()).toBe("Demoherb 4 SL");
  await page.getByRole("checkbox", { name: /^Minnesota 18B.37/ }).check();
  await page.getByRole("button", { name: "Save, still open" }).click();
  await page.getByText("This record is open.").waitFor();
  await page.getByRole("link", { name: "Close it" }).click();
  const missing = page.getByRole("checkbox", { name: /^Close it although/ });
  if ((await missing.count()) > 0) await missing.check();
  await page.getByRole("button", { name: "Close for good" }).click();
  await page.getByText(/Closed by Ada Quill/).waitFor();
  return /records\/([0-9a-f-]{36})/.exec(page.url())?.[1] ?? "";
}

describe("the whole job, from an empty notebook to a closed record and its PDF", () => {
  for (const [where, size, isCut] of [
    ["phone with the network cut", phone, true],
    ["desk with a network", desk, false],
  ] as const) {
    it(`on a ${where}`, async () => {
      const { page, context, check } = await personAt(browser, host.url, "Ada Quill", size);
      page.setDefaultTimeout(15_000);
      if (isCut) {
        await goTo(page, "#/phone");
        await page.getByText("it opens with no network").waitFor();
        await context.setOffline(true);
      }
      await calibrate(page);
      await plan(page);
      await spendTheDay(page);
      const id = await record(page);
      await goTo(page, `#/records/paper/record/${id}`);
      await page.locator(".sheets .paper").waitFor();
      const paper = await textOfPdf(page);
      expect(paper).toContain("Heron Flat, brush");
      expect(paper).toContain("Demoherb 4 SL");
      await page.reload();
      await goTo(page, `#/records/${id}`);
      await page.getByText(/Closed by Ada Quill/).waitFor();
      await goTo(page, "#/phone");
      await page.getByRole("button", { name: "Check every entry" }).click();
      await page.getByText(/entries checked: all sound/).waitFor();
      check();
      await context.close();
    });
  }
});
