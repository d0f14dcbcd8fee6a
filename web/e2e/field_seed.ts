// The notebook that a day in the field begins with: an invented job at sea, planned by the core itself.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { BrowserContext, Page } from "playwright-core";
import type { Job } from "../src/notebook/things";
import { answerOf, bringIn, given, idOf, type Given } from "./notebook_of";

export const jobId = idOf(1);
const demo = (name: string): unknown => JSON.parse(readFileSync(fileURLToPath(new URL(`../../data/demo/${name}.json`, import.meta.url)), "utf8"));

/** The demo job and what it is made of; limits and work may be changed. */
async function dayOf(change: Partial<Job>, more: Given[]): Promise<Given[]> {
  const { geometry } = demo("05-area-heron-flat") as { geometry: { geometry: never } };
  const request = demo("08-loads-heron-flat") as { products: Array<{ card: { name: string }; rate: string }> };
  const plan = { name: "Heron Flat", operation: "loads" as const, request: request as never, answer: await answerOf("loads", request), model: "swathbook 0.1.0", on: "2031-05-13" };
  const products = request.products.map(({ card, ...rest }, index) => ({ ...rest, card_id: idOf(20 + index), name: card.name }));
  const job: Job = { name: "Heron Flat, brush", work: "broadcast", state: "planned", stand: idOf(2), sprayer: idOf(3), plan, products, net_area: "7.4 ac", mix_per_area: "18.6 gal/ac", tank_usable: "47 gal" };
  return [
    given("stand", 2, { name: "Heron Flat", how: "file", boundary: geometry.geometry }),
    given("sprayer", 3, { name: "Boom rig", sort: "boom", width: "22.5 ft" }),
    ...request.products.map(({ card }, index) => given("product_card", 20 + index, { name: card.name, card: card as never })),
    given("job", 1, { ...job, ...change }),
    ...more,
  ] as Given[];
}

export async function settled(context: BrowserContext, change: object = {}): Promise<void> {
  await context.addInitScript((extra) => {
    if (!location.protocol.startsWith("http")) return;
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", JSON.stringify({ author: "Ada Quill", units: "us", language: "en", gloves: false, ...extra }));
  }, change);
}

/** Takes the entries in by the app's own door, then opens the day. */
export async function openDay(page: Page, url: string, change: Partial<Job> = {}, more: Given[] = []): Promise<void> {
  await bringIn(page, url, await dayOf(change, more));
  await page.goto(`${url}#/field-day`);
  await page.getByText("Heron Flat, brush").click();
  await page.locator(".day-acts").waitFor();
}

/** Drives along a parallel at sea, a fix each quarter second. */
export async function drive(page: Page, context: BrowserContext, from: number, to: number, accuracy = 3): Promise<void> {
  for (let step = from; step < to; step += 1) {
    await context.setGeolocation({ longitude: -128.3995 + step * 0.00002, latitude: -38.6495, accuracy });
    await page.waitForTimeout(250);
  }
}
