// With the network cut from the first entry on; two phones that meet; damaged copies; a newer version.
import { readFileSync, writeFileSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, Page } from "playwright-core";
import { launch, phone } from "./browser";
import { addSprayer, goTo, personAt, sprayers, stateOf } from "./people";
import { serveDist, type StaticHost } from "./static_server";

let host: StaticHost;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), "swathbook-travel-"));
beforeAll(async () => {
  host = await serveDist();
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

async function untilOffline(page: Page): Promise<void> {
  await goTo(page, "#/phone");
  await page.getByText("it opens with no network").waitFor();
}

async function copyOf(page: Page, name: string): Promise<string> {
  await goTo(page, "#/phone");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save a copy" }).click();
  const path = join(folder, name);
  await (await download).saveAs(path);
  return path;
}

async function bring(page: Page, path: string): Promise<string> {
  await goTo(page, "#/phone");
  await page.locator("input[type=file]").setInputFiles(path);
  const said = page.locator("section", { has: page.getByRole("heading", { name: "Bring in from another device" }) }).locator("[role=status] p");
  await said.first().waitFor();
  return (await said.allTextContents()).join(" ");
}

describe("with no network", () => {
  it("opens, writes, and opens again", async () => {
    const { page, context, check } = await personAt(browser, host.url, "Ana Crews", phone);
    await untilOffline(page);
    await context.setOffline(true);
    await page.reload();
    await addSprayer(page, "Boomless cluster");
    await page.reload();
    expect(await sprayers(page)).toEqual(["Boomless cluster"]);
    for (const room of ["Ground", "Jobs", "Field day", "Records", "Class"]) {
      await page.getByRole("link", { name: room, exact: true }).click();
      await page.getByRole("heading", { level: 1, name: room }).waitFor();
    }
    check();
    await context.close();
  });
});

describe("two phones", () => {
  it("come to the same state by carrying copies, whatever the order, and twice does no harm", async () => {
    const ana = await personAt(browser, host.url, "Ana Crews", phone);
    const bo = await personAt(browser, host.url, "Bo Tansy", phone);
    for (const { page, context } of [ana, bo]) {
      await untilOffline(page);
      await context.setOffline(true);
    }
    await addSprayer(ana.page, "Boom rig");
    await addSprayer(bo.page, "Five backpacks");
    const fromAna = await copyOf(ana.page, "ana.zip");
    const fromBo = await copyOf(bo.page, "bo.zip");
    expect(await bring(bo.page, fromAna)).toContain("1 entries added, 0 were here already");
    expect(await bring(ana.page, fromBo)).toContain("1 entries added");
    expect(await sprayers(ana.page)).toEqual(["Boom rig", "Five backpacks"]);
    expect(await sprayers(bo.page)).toEqual(["Boom rig", "Five backpacks"]);
    expect(await stateOf(ana.page)).toBe(await stateOf(bo.page));
    await bo.page.reload();
    expect(await bring(bo.page, fromAna)).toContain("0 entries added, 1 were here already");
    expect(await stateOf(bo.page)).toBe(await stateOf(ana.page));
    await goTo(bo.page, "#/phone");
    await bo.page.getByRole("button", { name: "Check every entry" }).click();
    await bo.page.getByText("2 entries checked: all sound.").waitFor();
    ana.check();
    bo.check();
    await ana.context.close();
    await bo.context.close();
  });

  it("refuse a damaged copy and take nothing of it", async () => {
    const ana = await personAt(browser, host.url, "Ana Crews", phone);
    await addSprayer(ana.page, "Boom rig");
    const copy = await copyOf(ana.page, "whole.zip");
    await ana.context.close();
    const bytes = readFileSync(copy);
    const hurt = join(folder, "hurt.zip");
    const cut = join(folder, "cut.zip");
    const other = join(folder, "other.txt");
    const at = bytes.indexOf("Boom rig");
    writeFileSync(hurt, Buffer.concat([bytes.subarray(0, at > 0 ? at : 90), Buffer.from("X"), bytes.subarray((at > 0 ? at : 90) + 1)]));
    writeFileSync(cut, bytes.subarray(0, bytes.length / 2));
    writeFileSync(other, "a shopping list");
    const { page, context } = await personAt(browser, host.url, "Bo Tansy", phone);
    for (const [file, words] of [
      [hurt, "damaged"],
      [cut, "damaged"],
      [other, "not a copy of a Swathbook notebook"],
    ] as const) {
      const said = await bring(page, file);
      expect(said).toContain(words);
      expect(said).toContain("Nothing was taken in");
      await page.reload();
      expect(await sprayers(page)).toEqual([]);
    }
    await context.close();
  });
});

describe("a newer version", () => {
  it("waits until it is taken, and then nothing typed or saved is gone", async () => {
    const { page, context, check } = await personAt(browser, host.url, "Ana Crews", phone);
    await untilOffline(page);
    await addSprayer(page, "Boom rig");
    await page.getByRole("link", { name: "Sprayers", exact: true }).click();
    await page.getByRole("link", { name: "Add a sprayer" }).first().click();
    await page.getByLabel("Name", { exact: true }).fill("Half typed");
    host.pretendNewer();
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await page.getByText("A newer Swathbook is ready").waitFor();
    await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Use it now" }).click()]);
    await page.getByLabel("Name", { exact: true }).waitFor();
    expect(await page.getByLabel("Name", { exact: true }).inputValue()).toBe("Half typed");
    expect(await sprayers(page)).toEqual(["Boom rig"]);
    check();
    await context.close();
  });
});
