import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContextOptions } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { demo, demoNotebook } from "./demo_job";
import { faultsOf } from "./looks";
import { bringIn, settingsOf } from "./notebook_of";
import { textOfPdf } from "./pdf_text";
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

async function opened(size: BrowserContextOptions, settings: object = {}) {
  const context = await browser.newContext(size);
  const { page, check } = await openPage(context, host.url);
  page.setDefaultTimeout(15_000);
  await settingsOf(page, { author: "Ada Quill", units: "us", language: "en", ...settings });
  await page.reload();
  await bringIn(page, host.url, await demoNotebook());
  const sheets = async (...path: string[]) => {
    await page.goto(`${host.url}#/records/paper/${path.join("/")}`);
    await page.locator(".sheets .paper").waitFor();
  };
  return {
    page,
    context,
    sheets,
    done: async () => {
      check();
      await context.close();
    },
  };
}

describe("paper made in the page", () => {
  for (const [size, options] of Object.entries({ phone, desk })) {
    it(`shows and prints the packet of a job with its figures on a ${size}`, async () => {
      const { page, sheets, done } = await opened(options);
      await sheets("job", demo.job);
      await shot(page, `paper-job-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      const text = await textOfPdf(page);
      expect(text).toContain("Heron Flat, spring brush control");
      expect(text).toContain("18.58"); // gal/ac measured by the boom rig: docs/methods/paper.md
      expect(text).toContain("45.88"); // three equal loads of 137.64 gal: story 5
      expect(text).toContain("Demoherb 4 SL");
      expect(text).not.toContain("How to print"); // the frame of the app stays off paper

      // What is taken out is not printed.
      await page.getByRole("checkbox", { name: /^Loads and mixing cards/ }).uncheck();
      await expect.poll(async () => (await page.locator(".sheets").textContent())?.includes("45.88")).toBe(false);
      await done();
    });
  }

  it("prints a calibration and the blank worksheet, in Spanish and metric on A4", async () => {
    const { page, sheets, done } = await opened(desk, { language: "es", units: "metric" });
    await sheets("calibration", demo.calibration);
    expect(await textOfPdf(page)).toContain("173.8"); // 18.58 gal/ac x 9.3540 L/ha
    await shot(page, "paper-calibration-es-desk");
    expect(await faultsOf(page)).toEqual([]);
    await page.goto(`${host.url}#/class/worksheet`);
    await page.locator(".sheets .paper").waitFor();
    const blank = await textOfPdf(page);
    expect(blank).toContain("L/ha");
    expect(blank).toMatch(/mL/);
    await shot(page, "paper-worksheet-es-desk");
    expect(await faultsOf(page)).toEqual([]);
    await done();
  });

  it("prints a record with its values, its corrections and what is not entered", async () => {
    const { page, sheets, done } = await opened(desk);
    await page.goto(`${host.url}#/records/new/${demo.job}`);
    await page.getByRole("checkbox", { name: /^Minnesota 18B.37/ }).check();
    await page.getByRole("button", { name: "Save, still open" }).click();
    await page.getByText("This record is open.").waitFor();
    const id = /records\/([0-9a-f-]{36})/.exec(page.url())?.[1] ?? "";
    await sheets("record", id);
    const text = await textOfPdf(page);
    expect(text).toContain("Minnesota Statutes 18B.37");
    expect(text).toContain("7.4 ac");
    expect(text).toContain("5 mph, gust 8 mph 06:40");
    expect(text).toContain("Company and address"); // wanted, and a blank to write in
    expect(text).not.toContain("7 CFR 110");
    await shot(page, "paper-record-desk");
    expect(await faultsOf(page)).toEqual([]);
    await done();
  });

  it("works with no network once the page was opened with one", async () => {
    const { page, context, sheets, done } = await opened(phone);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    await sheets("job", demo.job);
    expect(await page.locator(".sheets").textContent()).toContain("45.88");
    await done();
  });
});

describe("paper made by a server behind the page", () => {
  it("asks a server behind the page for the PDF, with the same order and the token", async () => {
    const { page, done } = await opened(desk);
    await page.evaluate(() => sessionStorage.setItem("swathbook token", "a token of this run"));
    await page.route("**/api/health", (route) => route.fulfill({ json: { name: "swathbook" } }));
    await page.route("**/api/packet", (route) => route.fulfill({ contentType: "application/pdf", body: "%PDF-1.7 of a server" }));
    await page.goto(`${host.url}#/records/paper/job/${demo.job}`);
    const [request] = await Promise.all([page.waitForRequest("**/api/packet"), page.getByRole("button", { name: "Make the PDF" }).click()]);
    expect(request.headers()["x-swathbook-token"]).toBe("a token of this run");
    const order = request.postDataJSON() as { job: { name: string; operator_name: string; licence: string; supervised: string }; parts: Array<{ operation: string; request: string }>; units: string; paper: string };
    expect(order.job).toMatchObject({ name: "Heron Flat, spring brush control", operator_name: "Ada Quill", licence: "SPEC-0042", supervised: "Bo Tansy" });
    expect(order.parts.map(({ operation }) => operation)).toEqual(["area", "calibrate", "tip-check", "loads"]);
    expect(order).toMatchObject({ units: "us", paper: "letter" });
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the PDF" }).click()]);
    expect(download.suggestedFilename()).toBe("job-heron-flat-spring-brush-control.pdf");
    await page.route("**/api/packet", (route) => route.fulfill({ status: 401, json: { error: { code: "not_permitted", detail: "no" } } }));
    await page.getByRole("radio", { name: "A4" }).check();
    await page.getByRole("button", { name: "Make the PDF" }).click();
    await page.getByText("The server does not know this page.").waitFor();
    await done();
  });
});
