// The work of the Jobs room in a real browser: spot, stems, crew, tools, label cards; Spanish with metric
// units; the keyboard alone. Where a figure is published, the core's own case files name the source.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { desk, phone } from "./browser";
import { amount, box, figure, jobsHost, look, newJob, open, press, reads, type JobsHost } from "./job_acts";

let host: JobsHost;
beforeAll(async () => {
  host = await jobsHost();
});
afterAll(() => host.close());

describe("spot and stem work", () => {
  it("finds 4.8 qt/ac behind 21 gal of 2 % on 0.35 ac, and counts fills through a reload", async () => {
    const { page, end } = await open(host, phone);
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
    const { page, end } = await open(host, phone, { gloves: true });
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
    const { page, end } = await open(host, desk);
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
    const { page, end } = await open(host, phone);
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
    const { page, end } = await open(host, phone);
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

describe("another language, other units, no mouse", () => {
  it("plans in Spanish and metric", async () => {
    const { page, end } = await open(host, phone, { language: "es", units: "metric" });
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
    const { page, end } = await open(host, desk);
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
