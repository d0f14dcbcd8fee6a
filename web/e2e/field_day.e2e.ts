// A day in the field: go or stop, a load, a pass with a gap, a reload, a kill, a full disk. Invented, at sea.
import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { drive, jobId, openDay, settled } from "./field_seed";
import { faultsOf } from "./looks";
import { given } from "./notebook_of";
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

const atSea = { permissions: ["geolocation"], geolocation: { longitude: -128.3995, latitude: -38.6495, accuracy: 3 } };

const box = (page: Page, name: string) => page.getByRole("textbox", { name: new RegExp(`^${name}`) });

async function fillReading(page: Page, wind: string, gust: string): Promise<void> {
  await page.getByRole("link", { name: "Take a reading" }).click();
  await box(page, "Wind").fill(wind);
  await box(page, "Strongest gust").fill(gust);
  await page.getByRole("button", { name: /^SW south-west$/ }).click();
  await box(page, "Air temperature").fill("71");
  await box(page, "Relative humidity").fill("62");
  await page.getByRole("checkbox", { name: "I looked, and saw none of these" }).check();
}

const saveReading = async (page: Page) => {
  await page.getByRole("button", { name: "Save the reading" }).click();
  await page.locator(".day-acts").waitFor();
};

interface OwnChromium {
  context: BrowserContext;
  /** As a dead battery would: every process of this browser at once, with no farewell. */
  kill: () => Promise<void>;
}

/** A browser with a folder of its own that can be killed and opened again. */
async function ownChromium(folder: string): Promise<OwnChromium> {
  const flags = ["--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--remote-debugging-port=0", `--user-data-dir=${folder}`, "about:blank"];
  const child: ChildProcess = spawn(process.env["CHROMIUM"] ?? "/usr/bin/chromium", flags, { detached: true, stdio: ["ignore", "ignore", "pipe"] });
  const address = await new Promise<string>((resolve) => {
    let said = "";
    child.stderr?.on("data", (text: Buffer) => {
      said += text.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
  });
  const connected = await chromium.connectOverCDP(address);
  const context = connected.contexts()[0] as BrowserContext;
  await context.grantPermissions(atSea.permissions);
  await context.setGeolocation(atSea.geolocation);
  return {
    context,
    kill: async () => {
      const gone = new Promise((resolve) => child.once("exit", resolve));
      process.kill(-(child.pid as number), "SIGKILL");
      await gone;
      await connected.close().catch(() => undefined);
    },
  };
}

describe("a day in the field", () => {
  for (const [size, options] of Object.entries({ phone, desk })) {
    it(`says go within the limits and stop beyond them, with whose limit, on a ${size}`, async () => {
      const context = await browser.newContext(options);
      await settled(context);
      const { page, check } = await openPage(context, host.url);
      await openDay(page, host.url, { limits: [{ name: "Contract", max_wind: "8 mph" }] });
      await page.getByText("NO READING", { exact: true }).waitFor();
      await shot(page, `field-day-begin-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      await fillReading(page, "6", "7");
      await page.getByText(/Demoherb 4 SL · 85 °?deg?F|Demoherb 4 SL · 85/).waitFor();
      await shot(page, `field-day-reading-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      await saveReading(page);
      await page.getByText("GO", { exact: true }).waitFor();
      await page.getByText("by the limits that were entered").waitFor();
      // The contract's 8 mph is stricter than the label's 10.
      await fillReading(page, "9.2", "9.5");
      await saveReading(page);
      await page.locator(".board.stop").getByText("STOP", { exact: true }).waitFor();
      await page.getByText("Contract · 8 mph").first().waitFor();
      expect(await page.locator("main").innerText()).not.toMatch(/\bsafe\b/i);
      await shot(page, `field-day-stop-${size}`);
      expect(await faultsOf(page)).toEqual([]);
      check();
      await context.close();
    });
  }

  it("asks for a new reading when the last one is old", async () => {
    const context = await browser.newContext(phone);
    await settled(context);
    const page = await context.newPage();
    await page.clock.install();
    await page.goto(host.url);
    await openDay(page, host.url);
    await fillReading(page, "6", "7");
    await saveReading(page);
    await page.getByText("GO", { exact: true }).waitFor();
    await page.clock.fastForward(31 * 60_000);
    await page.getByText("READ AGAIN", { exact: true }).waitFor();
    await page.getByText("The last reading is too old. Take a new one.").waitFor();
    await context.close();
  });

  it("ticks off a load, keeps the ticks over a reload, and saves it as mixed", async () => {
    const context = await browser.newContext(phone);
    await settled(context, { gloves: true });
    const { page, check } = await openPage(context, host.url);
    await openDay(page, host.url);
    await page.getByRole("link", { name: "Next load" }).click();
    await page.getByRole("heading", { level: 1, name: "Load 1 of 3" }).waitFor();
    await page.getByText("45.88 gal").first().waitFor();
    await page.getByText("1 gal 29.9 fl oz").waitFor();
    const rows = page.locator("label.mix-step");
    const total = await rows.count();
    // The product goes in after the ammonium sulphate, before the surfactant.
    const words = await rows.allInnerTexts();
    const place = (name: string) => words.findIndex((row) => row.includes(name));
    expect(place("Sampletown AMS")).toBeLessThan(place("Demoherb 4 SL"));
    expect(place("Demoherb 4 SL")).toBeLessThan(place("Mockstick 90"));
    await rows.nth(0).click();
    await rows.nth(1).click();
    await page.waitForTimeout(200);
    await page.reload();
    await rows.nth(1).waitFor();
    expect(await page.locator("label.mix-step.chosen").count()).toBe(2);
    await shot(page, "field-day-load-phone");
    expect(await faultsOf(page)).toEqual([]);
    const mixed = page.getByRole("button", { name: /^Mixed/ });
    expect(await mixed.isDisabled()).toBe(true);
    for (let row = 2; row < total; row += 1) await rows.nth(row).click();
    await mixed.click();
    await page.getByText("Load 1 is in the tank").waitFor();
    await page.getByRole("link", { name: "Load is finished" }).click();
    await box(page, "Left over in the tank").fill("3");
    await page.getByRole("button", { name: "Load is finished" }).click();
    await page.getByText("3 gal left over").waitFor();
    await page.getByRole("link", { name: "Next load" }).click();
    await page.getByRole("heading", { level: 1, name: "Load 2 of 3" }).waitFor();
    check();
    await context.close();
  });

  it("records a pass with a gap, goes on after a reload, and never joins the two", async () => {
    const context = await browser.newContext({ ...phone, ...atSea });
    await settled(context, { gloves: true });
    const { page, check } = await openPage(context, host.url);
    const inTank = given("load", 30, { job: jobId, number: 1, mix: "45.88 gal", carrier: "44.53 gal", mixed_at: new Date().toISOString() });
    await openDay(page, host.url, {}, [inTank]);
    const buttons = page.locator(".day-grid .button");
    for (const button of await buttons.all()) {
      const box = await button.boundingBox();
      expect(box?.y ?? 0).toBeGreaterThan(844 * 0.4);
      expect(box?.height ?? 0).toBeGreaterThanOrEqual(126);
    }
    await page.getByRole("button", { name: "Start spraying" }).click();
    await drive(page, context, 1, 16);
    await page.getByText("Spray is ON").first().waitFor();
    await page.getByText("Good position").waitFor();
    await page.waitForTimeout(3300);
    await page.goto("about:blank");
    await drive(page, context, 30, 31);
    await page.goto(`${host.url}#/field-day/${jobId}`);
    await page.getByText("Spray is ON").first().waitFor();
    await drive(page, context, 30, 40);
    await page.getByText(/1 gap, .* not recorded, not joined/).waitFor();
    await page.waitForTimeout(3300);
    await shot(page, "field-day-recording-phone");
    expect(await faultsOf(page)).toEqual([]);
    const giant = await page.locator(".button.giant").boundingBox();
    expect(giant?.y ?? 0).toBeGreaterThan(844 * 0.4);
    // Fourteen steps of 2e-5 degrees before the gap (1.74 m each at 38.65 S by hand), nine after: 40 m, 22.5 ft wide, 0.068 ac.
    // The 24 m of the gap, had they been joined, would make it 0.108 ac.
    const swept = await page.locator(".figure.main .figure-value").first().innerText();
    const acres = Number(swept.split(/\s/)[0]);
    expect(acres).toBeGreaterThan(0.05);
    expect(acres).toBeLessThan(0.08);
    // At 18.6 gal/ac 0.068 to 0.075 ac take 1.26 to 1.4 gal of the 45.88 in the tank, by hand.
    await page.getByText(/^44\.[56]\d* gal$/).waitFor();
    // In another room the recording goes on and says so.
    await page.getByRole("link", { name: "Ground", exact: true }).click();
    await page.getByText("A pass is being recorded: Heron Flat, brush").waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("link", { name: "Go there" }).click();
    // A disk that is full now is said, and what came is written once there is room.
    await page.evaluate(() => {
      const store = IDBObjectStore.prototype as IDBObjectStore & { kept?: IDBObjectStore["put"] };
      store.kept = store.put;
      store.put = () => {
        throw new DOMException("the disk is full", "QuotaExceededError");
      };
    });
    await drive(page, context, 40, 42);
    await page.getByText("no room left: the newest positions are only in memory").waitFor();
    await page.evaluate(() => {
      const store = IDBObjectStore.prototype as IDBObjectStore & { kept?: IDBObjectStore["put"] };
      if (store.kept) store.put = store.kept;
    });
    await page.getByText("no room left: the newest").waitFor({ state: "hidden" });
    await page.getByRole("button", { name: /I turned it OFF/ }).click();
    await page.getByRole("button", { name: /I turned it ON/ }).waitFor();
    await page.getByRole("button", { name: "End this pass" }).click();
    await page.getByText(/^Pass, 0\.0\d+ ac/).waitFor();
    await page.getByText("1 gap", { exact: true }).waitFor();
    const kept = await page.evaluate(async () => {
      const open = await new Promise<IDBDatabase>((resolve) => {
        const asking = indexedDB.open("swathbook");
        asking.onsuccess = () => resolve(asking.result);
      });
      const all = <T>(store: string) =>
        new Promise<T[]>((resolve) => {
          const asking = open.transaction(store).objectStore(store).getAll();
          asking.onsuccess = () => resolve(asking.result as T[]);
        });
      const blobs = await all<{ type: string; bytes: ArrayBuffer }>("blobs");
      const forms = await all<{ key: string }>("forms");
      return { lines: blobs.map(({ bytes }) => new TextDecoder().decode(bytes)), tracks: forms.filter(({ key }) => /^(track|fixes)\//.test(key)).length };
    });
    const fixes = (kept.lines[0] ?? "").trim().split("\n").map((line) => JSON.parse(line) as { part: number; t_seconds: number });
    expect(fixes.length).toBeGreaterThanOrEqual(26);
    expect(new Set(fixes.map(({ part }) => part)).size).toBe(2);
    expect(kept.tracks).toBe(0);
    await page.getByRole("link", { name: "Close the day" }).click();
    await page.getByText("Loads mixed").waitFor();
    await page.getByRole("button", { name: "The job is done" }).click();
    await page.getByText("This job is done.").waitFor();
    await shot(page, "field-day-close-phone");
    expect(await faultsOf(page)).toEqual([]);
    expect(await page.getByRole("link", { name: "Write the record" }).getAttribute("href")).toBe(`#/records/new/${jobId}`);
    check();
    await context.close();
  });

  it("keeps every acknowledged entry when the phone is killed in the middle of a pass", async () => {
    const folder = mkdtempSync(join(tmpdir(), "swathbook-kill-"));
    const first = await ownChromium(folder);
    await settled(first.context);
    const { page } = await openPage(first.context, host.url);
    await openDay(page, host.url);
    await fillReading(page, "6", "7");
    await saveReading(page);
    await page.getByRole("button", { name: "Start spraying" }).click();
    await drive(page, first.context, 1, 14);
    await page.waitForTimeout(3300);
    await first.kill();
    const second = await ownChromium(folder);
    await settled(second.context);
    const { page: again } = await openPage(second.context, `${host.url}#/field-day/${jobId}`);
    await again.getByText("Reading: GO").waitFor();
    await again.getByText("Pass begun").waitFor();
    await again.getByText("Spray is ON").first().waitFor();
    await drive(again, second.context, 30, 34);
    await again.getByText(/1 gap/).first().waitFor();
    await again.getByRole("button", { name: "End this pass" }).click();
    await again.getByText(/^Pass, 0\.0\d+ ac/).waitFor();
    await second.kill();
    rmSync(folder, { recursive: true, force: true });
  });

  it("asks after a long break whether the spray is still on, and works without a position", async () => {
    const context = await browser.newContext(phone);
    await settled(context);
    const { page, check } = await openPage(context, host.url);
    await openDay(page, host.url);
    await page.getByRole("button", { name: "Start spraying" }).click();
    await page.getByText("This page may not read the position").waitFor();
    expect(await page.getByRole("link", { name: "Count by hand" }).count()).toBe(1);
    await shot(page, "field-day-refused-phone");
    expect(await faultsOf(page)).toEqual([]);
    // The phone was off for a quarter of an hour.
    await page.evaluate(async () => {
      const open = await new Promise<IDBDatabase>((resolve) => {
        const asking = indexedDB.open("swathbook");
        asking.onsuccess = () => resolve(asking.result);
      });
      const forms = open.transaction("forms", "readwrite").objectStore("forms");
      await new Promise<void>((resolve) => {
        const asking = forms.openCursor(IDBKeyRange.bound("track/", "track/~"));
        asking.onsuccess = () => {
          const row = asking.result?.value as { value: { begun: number } };
          row.value.begun -= 15 * 60_000;
          asking.result?.update(row);
          forms.transaction.oncomplete = () => resolve();
        };
      });
    });
    await context.grantPermissions(["geolocation"]);
    await context.setGeolocation(atSea.geolocation);
    await page.reload();
    await page.getByText("Recording was cut at").waitFor();
    await page.getByText("Not recorded now").waitFor();
    await shot(page, "field-day-held-phone");
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Go on, spray off" }).click();
    await page.getByText("Good position").waitFor();
    await page.getByText("Spray is OFF").first().waitFor();
    await page.getByRole("button", { name: "End this pass" }).click();
    await page.getByText("Pass, no area: positions or width are missing").waitFor();
    check();
    await context.close();
  });

  it("says so when the disk is full and keeps what was typed", async () => {
    const context = await browser.newContext(phone);
    await settled(context);
    const { page, check } = await openPage(context, host.url);
    await openDay(page, host.url);
    await fillReading(page, "6", "7");
    await page.evaluate(() => {
      const store = IDBObjectStore.prototype as IDBObjectStore & { kept?: IDBObjectStore["add"] };
      store.kept = store.add;
      store.add = () => {
        throw new DOMException("the disk is full", "QuotaExceededError");
      };
    });
    await page.getByRole("button", { name: "Save the reading" }).click();
    await page.getByRole("alert").getByText("no room left").waitFor();
    await shot(page, "field-day-full-phone");
    expect(await box(page, "Wind").inputValue()).toBe("6");
    await page.evaluate(() => {
      const store = IDBObjectStore.prototype as IDBObjectStore & { kept?: IDBObjectStore["add"] };
      if (store.kept) store.add = store.kept;
    });
    await saveReading(page);
    await page.getByText("Reading: GO").waitFor();
    check();
    await context.close();
  });

  it("counts runs by hand when there is no position, keeps a photo as it is, in Spanish and metric", async () => {
    const context = await browser.newContext(phone);
    await settled(context, { language: "es", units: "metric" });
    const { page, check } = await openPage(context, host.url);
    await openDay(page, host.url);
    await page.getByText("SIN LECTURA", { exact: true }).waitFor();
    await shot(page, "field-day-spanish-phone");
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("link", { name: "Contar a mano" }).click();
    await box(page, "Largo de un recorrido").fill("100");
    for (let run = 0; run < 3; run += 1) await page.getByRole("button", { name: "Un recorrido más" }).click();
    await page.waitForTimeout(200);
    await page.reload();
    await page.getByText("3 recorridos", { exact: true }).waitFor();
    // 3 runs of 100 m, 22.5 ft (6.858 m) wide: 2057.4 m2 by hand.
    await page.getByText(/0\.2057/).first().waitFor();
    await shot(page, "field-day-hand-phone");
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Guardar estos recorridos" }).click();
    await page.getByText("A mano: 3 × 100 m").waitFor();
    await page.getByRole("link", { name: "Nota o foto" }).click();
    await box(page, "Nota").fill("Cerco roto al norte");
    const pixel = Buffer.from("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==", "base64");
    await page.locator("input[type=file]").setInputFiles({ name: "cerco.png", mimeType: "image/png", buffer: pixel });
    await page.getByText("Cerco roto al norte").waitFor();
    await page.locator(".timeline-photo").waitFor();
    await shot(page, "field-day-timeline-phone");
    expect(await faultsOf(page)).toEqual([]);
    check();
    await context.close();
  });
});
