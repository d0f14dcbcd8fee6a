// The Jobs room in a real browser, with the figures of the stories: loads, three bases, spot, stems, crew,
// and the tools. Where a figure is published, the core's own case files name the source.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContextOptions, Locator, Page } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { demo, demoNotebook } from "./demo_job";
import { faultsOf } from "./looks";
import { bringIn, given, idOf } from "./notebook_of";
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

type Settings = Partial<{ units: "us" | "metric"; language: "en" | "es"; gloves: boolean; author: string }>;

async function open(size: BrowserContextOptions, set: Settings = {}) {
  const context = await browser.newContext(size);
  await context.addInitScript((kept) => {
    if (localStorage.getItem("swathbook settings") === null) localStorage.setItem("swathbook settings", kept);
  }, JSON.stringify({ units: "us", language: "en", gloves: false, sound: false, author: "Ada Quill", ...set }));
  const opened = await openPage(context, `${host.url}#/jobs`);
  return { ...opened, end: async () => (opened.check(), await context.close()) };
}

type Place = Page | Locator;
const box = (place: Place, name: string | RegExp) => place.getByRole("textbox", { name });

/** Types an amount and chooses its unit, as a person does. */
async function amount(place: Place, name: string, text: string): Promise<void> {
  const at = text.indexOf(" ");
  await box(place, name).first().fill(text.slice(0, at));
  const unit = place.getByLabel(new RegExp(`^(Unit of|Unidad de) ${name}`)).first();
  if ((await unit.count()) > 0) await unit.selectOption(text.slice(at + 1));
}

const press = (place: Place, name: string | RegExp) => place.getByRole("button", { name }).first().click();

/** A job by its guided form; ends on its page. */
async function newJob(page: Page, { name, work = "Broadcast", area }: { name: string; work?: string; area: string }): Promise<void> {
  await page.goto(`${host.url}#/jobs/new`);
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
async function product(page: Page, number: number, { name, strength, rate, dry }: Product): Promise<Locator> {
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

const figure = (page: Page, label: string) => page.locator(".figure-press").filter({ has: page.locator(".figure-label").getByText(label, { exact: true }) }).first();
async function reads(page: Page, label: string, text: string): Promise<void> {
  await expect.poll(() => figure(page, label).innerText().catch(() => ""), { timeout: 5000 }).toContain(text);
}

async function look(page: Page, name: string): Promise<void> {
  await shot(page, `jobs-${name}`);
  expect(await faultsOf(page)).toEqual([]);
}

describe("loads of a broadcast job", () => {
  for (const [where, size] of Object.entries({ phone, desk })) {
    it(`makes three loads of 45.88 gal from 7.4 ac and keeps them, on a ${where}`, async () => {
      const { page, end } = await open(size);
      await look(page, `list-empty-${where}`);
      await newJob(page, { name: "Heron Flat, brush", area: "7.4 ac" });
      await look(page, `job-new-${where}`);
      await page.getByRole("link", { name: "Plan the loads" }).click();
      await amount(page, "Mix on an area", "18.6 gal/ac");
      await amount(page, "Tank, usable", "47 gal");
      const first = await product(page, 1, { name: "Demoherb 4 SL", strength: "4 lb a.e./gal", rate: "2 qt/ac" });
      await amount(first, "Size of its jug", "2.5 gal");
      await amount(first, "Put on this ground this year", "0 qt/ac");
      await reads(page, "Mix in all", "137.6");
      await reads(page, "Loads", "3");
      await reads(page, "First load", "45.88");

      // A dead battery in the middle of the form.
      await page.reload();
      await page.getByText("You were in the middle of this").waitFor();
      await reads(page, "Mix in all", "137.6");
      expect(await box(page.getByRole("group", { name: "Product 1" }), /^Rate/).inputValue()).toBe("2");

      await press(page, "Add a jug, cup or scale");
      const jug = page.getByRole("group", { name: "Measure 1" });
      await box(jug, "Name").fill("half-gallon jug");
      await amount(jug, "From mark to mark", "2 fl oz");
      await amount(jug, "Top mark", "64 fl oz");
      await page.getByText("2 full 64 fl oz and to 30 fl oz").first().waitFor();
      await look(page, `plan-${where}`);

      const loads = page.locator(".table.load");
      expect(await loads.count()).toBe(2); // two alike, and the one with the rinsed jug
      expect(await loads.nth(0).innerText()).toContain("Loads 1 to 2 of 3, each");
      expect(await loads.nth(1).innerText()).toContain("1.875 gal"); // the jug emptied in the third load, rinsed
      expect(await loads.nth(0).innerText()).toContain("1 gal 29.9 fl oz");
      await press(page, "Save the plan");
      await page.getByRole("heading", { name: "The saved plan" }).waitFor();
      await look(page, `job-planned-${where}`);

      await page.getByRole("link", { name: "Mixing card" }).click();
      await page.getByRole("heading", { name: /Load 1 of 3/ }).waitFor();
      await press(page, "Both");
      await page.getByRole("heading", { name: /Carga 1 de 3/ }).waitFor();
      await press(page, "Next load");
      await page.getByRole("heading", { name: /Carga 2 de 3/ }).waitFor();
      await look(page, `mixing-card-${where}`);
      await end();
    });
  }

  it("shows what another carrier volume changes, beside the saved plan", async () => {
    const { page, end } = await open(phone, { gloves: true });
    await newJob(page, { name: "Kettle Draw", area: "7.4 ac" });
    await page.getByRole("link", { name: "Plan the loads" }).click();
    await amount(page, "Mix on an area", "18.6 gal/ac");
    await amount(page, "Tank, usable", "47 gal");
    await product(page, 1, { name: "Demoherb 4 SL", rate: "2 qt/ac" });
    await press(page, "Save the plan");
    await page.getByRole("link", { name: /^What if/ }).click();
    await press(page, "More: Mix on an area");
    const table = page.locator(".beside");
    await expect.poll(() => table.innerText()).toContain("145 gal"); // 19.6 gal/ac on 7.4 ac is 145.04
    expect(await table.innerText()).toContain("137.6 gal");
    expect(await page.getByRole("button", { name: "More: Mix on an area" }).evaluate((key) => key.getBoundingClientRect().height)).toBeGreaterThanOrEqual(126);
    await box(page, /^Speed when calibrated/).fill("4");
    await box(page, /^Ground speed/).fill("3.5");
    // 18.6 gal/ac at 4 mph is 18.6 x 4 / 3.5 = 21.26 gal/ac at 3.5 mph.
    await expect.poll(() => box(page, /^Mix on an area/).inputValue()).toBe("21.26");
    await look(page, "what-if-gloves-phone");
    await page.reload();
    await expect.poll(() => box(page, /^Mix on an area/).inputValue()).toBe("21.26");
    await press(page, "Make this the plan");
    await page.getByRole("heading", { name: "The saved plan" }).waitFor();
    await end();
  });

  it("puts three rate bases into one tank", async () => {
    const { page, end } = await open(desk);
    await newJob(page, { name: "One tank", area: "1.25 ac" });
    await page.getByRole("link", { name: "Plan the loads" }).click();
    await amount(page, "Mix on an area", "20 gal/ac");
    await amount(page, "Tank, usable", "25 gal");
    await product(page, 1, { name: "Alpha", rate: "1 qt/ac" });
    await product(page, 2, { name: "Beta", rate: "10 fl oz/ac" });
    await product(page, 3, { name: "Gamma", rate: "1 qt/ac" });
    await product(page, 4, { name: "Delta AMS", dry: true, rate: "17 lb/100 gal" });
    const load = page.locator(".table.load").first();
    await expect.poll(() => load.innerText()).toMatch(/Alpha\s+40 fl oz[\s\S]*Beta\s+12\.5 fl oz[\s\S]*Gamma\s+40 fl oz[\s\S]*Delta AMS\s+4\.25 lb/);
    await end();
  });

  it("wets a third of the field with 10 in bands on 30 in rows, and asks what the label counts", async () => {
    const { page, end } = await open(phone);
    await newJob(page, { name: "Rows", area: "10 ac" });
    await page.getByRole("link", { name: "Plan the loads" }).click();
    await page.getByRole("radio", { name: "Bands over the rows" }).check();
    await amount(page, "Mix on an area", "15 gal/ac");
    await amount(page, "Width of one band", "10 in");
    await amount(page, "From row to row", "30 in");
    await page.getByRole("group", { name: "The mix on an area was calibrated over" }).getByRole("radio", { name: "the ground under the bands" }).check();
    await amount(page, "Tank, usable", "60 gal");
    const group = await product(page, 1, { name: "Demoherb 4 SL", rate: "2 qt/ac" });
    await page.getByText("Does the label count the ground under the bands or the whole field?").first().waitFor();
    await group.getByRole("radio", { name: "the ground under the bands" }).check();
    await reads(page, "Ground wetted", "3.333 ac");
    await reads(page, "Mix in all", "50 gal");
    await look(page, "bands-phone");
    await press(page, "Save the plan");
    await page.getByRole("heading", { name: "The saved plan" }).waitFor();
    await page.getByRole("link", { name: "Change the plan" }).click();
    await reads(page, "Mix in all", "50 gal");
    await end();
  });
});

describe("spot and stem work", () => {
  it("finds 4.8 qt/ac behind 21 gal of 2 % on 0.35 ac, and counts fills through a reload", async () => {
    const { page, end } = await open(phone);
    await page.goto(`${host.url}#/jobs/cards/new`);
    await box(page, /^Name on the label/).fill("Demoherb 4 SL");
    await press(page, /Yearly caps/);
    await amount(page, "Most product in a year", "5 qt/ac");
    await press(page, "Save now");
    await page.getByRole("heading", { level: 1, name: "Demoherb 4 SL" }).waitFor();
    await newJob(page, { name: "Patches", work: "Spot", area: "0.35 ac" });
    await page.getByRole("link", { name: "Mix and count" }).click();
    await press(page, "Add a product");
    const group = page.getByRole("group", { name: "Product 1" });
    await group.getByRole("combobox", { name: "Label card" }).selectOption({ label: "Demoherb 4 SL" });
    await amount(group, "Rate", "2 % v/v");
    await amount(group, "Put on this ground this year", "0 qt/ac");
    await page.getByRole("radio", { name: "I know how much was sprayed" }).check();
    await amount(page, "Mix sprayed on it", "21 gal");
    await reads(page, "Mix on an area", "60 gal/ac");
    await reads(page, "On the ground", "4.8 qt/ac");
    await reads(page, "Used of the limit", "96 %");
    await reads(page, "Strongest mix the limits allow", "2.083 % v/v"); // 5 qt/ac in 60 gal/ac
    await page.getByRole("radio", { name: "I count fills" }).check();
    await amount(page, "One fill", "3 gal");
    for (let fill = 0; fill < 7; fill += 1) await press(page, "One more fill");
    await reads(page, "Mix on an area", "60 gal/ac"); // 7 fills of 3 gal are 21 gal
    await press(page, "Undo");
    await page.reload();
    await expect.poll(() => page.locator(".tally-count strong").innerText()).toBe("6");
    await press(page, "One more fill");
    await reads(page, "Mix on an area", "60 gal/ac");
    await look(page, "spot-phone");
    await press(page, "Save the fills");
    await page.getByText("Sprayed before this count: 21 gal").waitFor();
    await reads(page, "Mix on an area", "60 gal/ac"); // still counted after saving
    await end();
  });

  it("holds the count against 412 cuts on an acre, and keeps every press", async () => {
    const { page, end } = await open(phone, { gloves: true });
    await newJob(page, { name: "Stems on the ridge", work: "Stem by stem", area: "1 ac" });
    await page.getByRole("link", { name: "Doses and count" }).click();
    await amount(page, "Liquid for each cut", "0.5 mL per cut");
    const group = page.getByRole("group", { name: "Product 1" });
    await box(group, "Name on the label").fill("Demoherb 240");
    await box(group, /^Active ingredient/).fill("fictionate acid");
    await amount(group, "Strength", "240 g a.e./L");
    await press(group, "Save this card and use it");
    await amount(group, "Most on an area", "0.109 lb a.e./ac");
    await reads(page, "Cuts allowed on an acre", "412");
    await reads(page, "Demoherb 240 in one cut", "0.12 g a.e.");
    const tally = page.getByRole("button", { name: "One more cut" });
    expect(await tally.evaluate((key) => key.getBoundingClientRect().height)).toBeGreaterThanOrEqual(126);
    for (let cut = 0; cut < 5; cut += 1) await tally.click();
    await press(page, "Undo");
    await reads(page, "Cuts left", "408");
    await page.reload();
    await expect.poll(() => page.locator(".tally-count strong").innerText()).toBe("4");
    await press(page, "Empty this form"); // asked twice: one press loses no count
    await press(page, "Cancel");
    expect(await page.locator(".tally-count strong").innerText()).toBe("4");
    await look(page, "stems-gloves-phone");
    await press(page, "Save the count");
    await page.getByText("4 cuts of earlier counts are included.").waitFor();
    await reads(page, "Cuts left", "408");
    await end();
  });
});

describe("crew and tools", () => {
  it("joins 22, 27, 31, 38 and 46 gal/ac to 30.7, and says what the label would have to allow", async () => {
    const { page, end } = await open(desk);
    await page.goto(`${host.url}#/jobs/tools/crew`);
    const outputs = { Ada: 22, Bo: 27, Cleo: 31, Dov: 38, Esme: 46 };
    for (const [index, [name, output]] of Object.entries(outputs).entries()) {
      if (index > 0) await press(page, "Add a person");
      const group = page.locator("fieldset.product").nth(index);
      await box(group, "Name").fill(name);
      await amount(group, "Calibrated output", `${output} gal/ac`);
    }
    await amount(page, "Product wanted on an area", "2 qt/ac");
    await amount(page, "Least product in one application", "1.5 qt/ac");
    await amount(page, "Most product in one application", "2.5 qt/ac");
    await page.reload();
    await reads(page, "Crew rate", "30.71 gal/ac");
    await reads(page, "Highest over lowest output", "2.091");
    const people = page.locator(".checks .check");
    expect(await people.filter({ hasText: "Esme" }).innerText()).toContain("over the most");
    expect(await people.filter({ hasText: "Ada" }).innerText()).toContain("under the least");
    expect(await people.filter({ hasText: "Cleo" }).getAttribute("class")).toContain("within");
    await look(page, "crew-desk");
    await end();
  });

  it("rinses, swaps a concentrate, treats hard water and tells who may go back", async () => {
    const { page, end } = await open(phone);
    await page.goto(`${host.url}#/jobs/tools/rinse`);
    await amount(page, "Stays in the sprayer", "2 gal");
    await amount(page, "Clean water for one rinse", "5 gal");
    await box(page, /^Rinses/).fill("3");
    await page.reload();
    await reads(page, "Left of the old mix", "2.332 %");
    await reads(page, "The same water in one big rinse", "11.76 %");
    await look(page, "rinse-phone");

    await page.goto(`${host.url}#/jobs/tools/substitute`);
    const make = async (name: string, strength: string) => {
      await box(page, "Name on the label").fill(name);
      await box(page, /^Active ingredient/).fill("fictionate acid");
      await amount(page, "Strength", strength);
      await press(page, "Save this card and use it");
    };
    await make("Demoherb 3 SL", "3 lb a.e./gal");
    await page.getByRole("combobox", { name: "Product in the plan" }).waitFor();
    await make("Demoherb 4 SL", "4 lb a.e./gal");
    await amount(page, "Its rate in the plan", "2 qt/ac");
    await reads(page, "Rate of the product in hand", "48 fl oz/ac");
    await reads(page, "Dose of both", "1.5 lb a.e./ac");
    await look(page, "substitute-phone");

    await page.goto(`${host.url}#/jobs/tools/water`);
    const minerals = { Calcium: 100, Magnesium: 40, Sodium: 30, Potassium: 5, Iron: 1 };
    for (const [name, ppm] of Object.entries(minerals)) await box(page, new RegExp(`^${name}`)).fill(String(ppm));
    await page.reload();
    await reads(page, "AMS the minerals ask for", "1.662 lb/100 gal");
    await look(page, "water-phone");

    await page.goto(`${host.url}#/jobs/tools/reentry`);
    await page.getByLabel("End of the last load").fill("2031-05-14T11:20");
    await page.getByRole("checkbox", { name: "Demoherb 4 SL" }).check();
    await page.getByText("not known").first().waitFor(); // nothing was typed from the label: never zero
    await look(page, "reentry-phone");

    await page.goto(`${host.url}#/jobs/tools/leftover`);
    await amount(page, "Mix left", "6 gal");
    await amount(page, "Mix on an area", "18.6 gal/ac");
    await press(page, "Add a product");
    const group = page.getByRole("group", { name: "Product 1" });
    await group.getByRole("combobox", { name: "Label card" }).selectOption({ label: "Demoherb 4 SL" });
    await amount(group, "Rate", "2 qt/ac");
    await reads(page, "Ground that would take it all", "0.3226 ac");
    await look(page, "leftover-phone");
    await end();
  });
});

describe("label cards", () => {
  it("types a label in short groups, survives a reload, and shows what was not entered", async () => {
    const { page, end } = await open(phone);
    await page.goto(`${host.url}#/jobs/cards/new`);
    await box(page, /^Name on the label/).fill("Demoherb 4 SL");
    await box(page, /^Registration number/).fill("99999-1");
    await look(page, "card-identity-phone");
    await press(page, "Next");
    await box(page, "Name of the ingredient").fill("fictionate acid");
    await amount(page, "Acid equivalent", "4 lb a.e./gal").catch(async () => box(page, /^Acid equivalent/).fill("4"));
    await press(page, "Next");
    await amount(page, "Most product in one application", "2.5 qt/ac");
    await box(page.getByRole("group", { name: "Most product in one application" }), "Page or section").fill("page 4, Rates");
    await look(page, "card-rates-phone");
    await page.reload();
    await page.getByText("You were in the middle of this").waitFor();
    expect(await box(page, /^Most product in one application/).inputValue()).toBe("2.5");
    await press(page, /Waiting times/);
    await amount(page, "People may enter after", "12 h");
    await page.getByRole("checkbox", { name: "until the spray has dried" }).check();
    await press(page, /What to wear/);
    await box(page, /^Protective equipment/).fill("Gloves, long sleeves, eyewear");
    await press(page, "Save the card");
    await page.getByRole("heading", { level: 1, name: "Demoherb 4 SL" }).waitFor();
    const row = (name: string) => page.locator(".limits-read > div").filter({ has: page.getByText(name, { exact: true }) });
    expect(await row("Most product in one application").innerText()).toContain("page 4, Rates");
    expect(await row("Most product in a year").innerText()).toContain("not entered");
    expect(await row("People may enter after").innerText()).toContain("12 h; until the spray has dried");
    await look(page, "card-phone");
    await end();
  });
});

describe("with a notebook that is there already", () => {
  for (const [where, size] of Object.entries({ phone, desk })) {
    it(`takes area, calibration and labels from it, and finds the strictest of all labels, on a ${where}`, async () => {
      const { page, end } = await open(size);
      const other = { name: "Fauxwick EC", card: { name: "Fauxwick EC", formulation: "emulsifiable_concentrate", limits: { max_wind: { value: "8 mph", where: "page 9" }, max_single_rate: { value: "1 pt/ac", where: "page 3" } } } };
      await bringIn(page, host.url, [...(await demoNotebook()), given("product_card", 50, other as never)]);
      await page.goto(`${host.url}#/jobs`);
      await page.getByRole("link", { name: /^Heron Flat, spring brush control/ }).waitFor();
      await look(page, `list-${where}`);

      await page.getByRole("link", { name: "New job" }).click();
      await box(page, /^Name of the job/).fill("Heron Flat, second pass");
      await press(page, "Next");
      await page.getByRole("combobox", { name: "Stand" }).selectOption({ index: 1 });
      expect(await box(page, /^Net area/).inputValue()).not.toBe(""); // the area that was kept with its map
      await amount(page, "Net area", "7.4 ac");
      await press(page, "Next");
      await page.getByRole("combobox", { name: "Sprayer" }).selectOption({ label: "Boom rig" });
      await press(page, /^Take 18\.\d+ gal\/ac/);
      expect(await box(page, /^Mix on an area/).inputValue()).toMatch(/^18\.5/);
      await look(page, `new-with-${where}`);
      await press(page, "Save the job");
      await page.getByRole("link", { name: "Plan the loads" }).click();
      await page.getByText(/95 of 100 times/).waitFor();
      await amount(page, "Tank, usable", "47 gal");
      const cards = { "Demoherb 4 SL": "3 qt/ac", "Fauxwick EC": "1 pt/ac", "Sampletown AMS": "8.5 lb/100 gal" };
      for (const [index, [name, rate]] of Object.entries(cards).entries()) {
        await press(page, /^Add (a|another) product/);
        const group = page.getByRole("group", { name: `Product ${index + 1}` });
        await group.getByRole("combobox", { name: "Label card" }).selectOption({ label: name });
        await amount(group, "Rate", rate);
      }
      // 3 qt/ac against the label's 2.5: told first, and the plan can still be looked at.
      await expect.poll(() => page.locator(".plan-answer .finding").first().innerText()).toContain("Stop");
      const row = (name: string) => page.locator(".limits-read > div").filter({ has: page.getByText(name, { exact: true }) });
      expect(await row("Most wind").innerText()).toMatch(/8 mph[\s\S]*Fauxwick EC, page 9/);
      expect(await row("People may enter after").innerText()).toMatch(/12 h; until the spray has dried[\s\S]*Demoherb 4 SL, page 2[\s\S]*not entered for Fauxwick EC/);
      await look(page, `plan-strictest-${where}`);
      await amount(page.getByRole("group", { name: "Product 1" }), "Rate", "2 qt/ac");
      await expect.poll(() => page.locator(".plan-answer .finding.stop").count()).toBe(0);
      await press(page, "Save the plan");
      await page.getByRole("heading", { name: "The saved plan" }).waitFor();
      await page.getByRole("link", { name: "Mixing card" }).click();
      await page.getByText("Long-sleeved shirt").first().waitFor();
      await look(page, `mixing-card-demo-${where}`);
      await end();
    });
  }

  it("opens jobs that another version wrote, with hardly a field", async () => {
    const { page, end } = await open(phone);
    const odd = [{}, { name: "Odd", work: "aerial", state: "lost", products: [{}], measures: [{}], plan: {} }, { name: "Gone", products: [{ card_id: "far", rate: "1 qt/ac", name: "Not here" }], stand: "far", sprayer: "far", operators: ["far"] }];
    await bringIn(page, host.url, odd.map((body, index) => given("job", 60 + index, { notes: "kept", ...body } as never)));
    for (const index of [0, 1, 2]) {
      for (const part of ["", "/edit", "/plan", "/card", "/what-if", "/crew", "/tools/leftover", "/tools/reentry", "/tools/substitute", "/tools/rinse", "/tools/water"]) {
        await page.goto(`${host.url}#/jobs/${idOf(60 + index)}${part}`);
        await page.locator("main h1").waitFor();
        expect((await page.locator("main").innerText()).length).toBeGreaterThan(20);
      }
    }
    await page.goto(`${host.url}#/jobs/${idOf(62)}/plan`);
    await page.getByText("This card is not on this phone").waitFor();
    await look(page, "card-missing-phone");
    await end();
  });

  it("shows the demo plan as it was saved and answers its tools", async () => {
    const { page, end } = await open(phone);
    await bringIn(page, host.url, await demoNotebook());
    await page.goto(`${host.url}#/jobs/${demo.job}`);
    await reads(page, "First load", "45.88 gal");
    await page.goto(`${host.url}#/jobs/${demo.job}/tools/leftover`);
    await amount(page, "Mix left", "6 gal");
    await reads(page, "Ground that would take it all", "0.3226 ac");
    const ground = page.getByRole("group", { name: "Ground 1" });
    await amount(ground, "Net area", "3 ac");
    await ground.getByRole("radio", { name: "Yes, read it" }).check();
    await page.locator(".way").first().filter({ hasText: "Spray on unsprayed ground" }).waitFor();
    await look(page, "leftover-demo-phone");
    await page.goto(`${host.url}#/jobs/${demo.job}/tools/reentry`);
    await page.getByLabel("End of the last load").fill("2031-05-14T11:20");
    await expect.poll(() => page.locator(".checks .check").first().innerText()).toMatch(/People: May 14, 2031, 23:20/); // 12 h after 11:20
    await look(page, "reentry-demo-phone");
    await end();
  });
});

describe("another language, other units, no mouse", () => {
  it("plans in Spanish and metric", async () => {
    const { page, end } = await open(phone, { language: "es", units: "metric" });
    await page.getByRole("link", { name: "Trabajo nuevo" }).click();
    await box(page, /^Nombre del trabajo/).fill("Ladera");
    await look(page, "new-es-phone");
    await press(page, "Siguiente");
    await amount(page, "Superficie neta", "3 ha");
    await press(page, "Siguiente");
    await press(page, "Guardar el trabajo");
    await page.getByRole("link", { name: "Planear las cargas" }).click();
    await amount(page, "Mezcla por superficie", "200 L/ha");
    await amount(page, "Tanque, útil", "250 L");
    await press(page, "Agregar un producto");
    const group = page.getByRole("group", { name: "Producto 1" });
    await box(group, "Nombre en la etiqueta").fill("Demoherb 4 SL");
    await press(group, "Guardar esta ficha y usarla");
    await box(group, /^Dosis/).fill("2,5");
    const mix = figure(page, "Mezcla en total");
    await expect.poll(() => mix.innerText()).toContain("600 L");
    expect(await page.locator(".table.load").innerText()).toContain("Cargas 1 a 3 de 3, cada una");
    await look(page, "plan-es-metric-phone");
    await end();
  });

  it("is done with the keyboard alone", async () => {
    const { page, end } = await open(desk);
    await page.goto(`${host.url}#/jobs/new`);
    await box(page, /^Name of the job/).focus();
    await page.keyboard.type("By keys");
    await page.keyboard.press("Tab");
    await page.keyboard.press("ArrowDown");
    expect(await page.getByRole("radio", { name: /^Spot/ }).isChecked()).toBe(true);
    await page.getByRole("button", { name: "Next" }).focus();
    await page.keyboard.press("Enter");
    await box(page, /^Net area/).focus();
    await page.keyboard.type("0.5");
    await page.getByRole("button", { name: "Next" }).focus();
    await page.keyboard.press("Space");
    await page.getByRole("button", { name: "Save the job" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "By keys" }).waitFor();
    await end();
  });
});
