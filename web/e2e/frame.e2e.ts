import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser } from "playwright-core";
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

describe("the frame", () => {
  for (const [name, size] of Object.entries({ phone, desk })) {
    it(`has six rooms and no fault on a ${name}`, async () => {
      const context = await browser.newContext(size);
      const { page, check } = await openPage(context, host.url);
      for (const room of ["Sprayers", "Ground", "Jobs", "Field day", "Records", "Class"]) {
        await page.getByRole("link", { name: room, exact: true }).click();
        await page.getByRole("heading", { level: 1, name: room }).waitFor();
        expect(await faultsOf(page)).toEqual([]);
      }
      await page.goto(`${host.url}#/phone`);
      await page.getByRole("heading", { level: 1, name: "This phone" }).waitFor();
      await shot(page, `phone-page-${name}`);
      expect(await faultsOf(page)).toEqual([]);
      check();
      await context.close();
    });
  }
});
