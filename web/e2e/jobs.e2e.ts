// Planning in the Jobs room in a real browser, with the figures of the stories: loads, three bases, bands,
// a notebook that is there already.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { desk, phone } from "./browser";
import { demo, demoNotebook } from "./demo_job";
import { amount, box, jobsHost, look, newJob, open, press, product, reads, type JobsHost } from "./job_acts";
import { bringIn, given, idOf } from "./notebook_of";

let host: JobsHost;
beforeAll(async () => {
  host = await jobsHost();
});
afterAll(() => host.close());

describe("loads of a broadcast job", () => {
  for (const [where, size] of Object.entries({ phone, desk })) {
    it(`makes three loads of 45.88 gal from 7.4 ac and keeps them, on a ${where}`, async () => {
      const { page, end } = await open(host, size);
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
    const { page, end } = await open(host, phone, { gloves: true });
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
    const { page, end } = await open(host, desk);
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
    const { page, end } = await open(host, phone);
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

describe("with a notebook that is there already", () => {
  for (const [where, size] of Object.entries({ phone, desk })) {
    it(`takes area, calibration and labels from it, and finds the strictest of all labels, on a ${where}`, async () => {
      const { page, end } = await open(host, size);
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
    const { page, end } = await open(host, phone);
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
    const { page, end } = await open(host, phone);
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
