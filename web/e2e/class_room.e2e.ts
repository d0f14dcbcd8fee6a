import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { desk, launch, openPage, phone, shot } from "./browser";
import { faultsOf } from "./looks";
import { core, settingsOf } from "./notebook_of";
import { serveDist, type StaticHost } from "./static_server";
import { textOfPdf } from "./pdf_text";

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
  page.setDefaultTimeout(10_000);
  await settingsOf(page, { author: "Ada Quill", units: "us", language: "en", ...settings });
  await page.reload();
  return {
    page,
    context,
    done: async () => {
      check();
      await context.close();
    },
  };
}

const amount = (page: Page, label: string) => page.getByRole("textbox", { name: new RegExp(`^${label}`) });

async function look(page: Page, name: string): Promise<void> {
  await shot(page, name);
  expect(await faultsOf(page)).toEqual([]);
}

// Story 24, figures invented: Bo reads ounces as gallons per acre on a tenfold course; Eli drove slower.
const five = [
  { name: "Ada", time: "20.2", caught: "112", hand: "13" },
  { name: "Bo", time: "20.6", caught: "115", hand: "115" },
  { name: "Cleo", time: "19.8", caught: "110", hand: "12.7" },
  { name: "Dee", time: "20.3", caught: "113", hand: "12.1" },
  { name: "Eli", time: "27.9", caught: "155", hand: "18.0" },
];

async function fillClass(page: Page): Promise<void> {
  await page.goto(`${host.url}#/class`);
  await page.getByRole("button", { name: "Begin a class" }).click();
  await amount(page, "Name of the class").fill("Spring class");
  await page.getByRole("radio", { name: "Boomless" }).check();
  await amount(page, "Width served").fill("26");
  await amount(page, "Course length").fill("113");
  await page.getByRole("button", { name: "Add a learner" }).click();
  for (const [index, learner] of five.entries()) {
    await page.getByRole("heading", { level: 1, name: `Learner ${index + 1}`, exact: true }).waitFor();
    await amount(page, "Name or number").fill(learner.name);
    await amount(page, "Time for the course").fill(learner.time);
    await amount(page, "Caught in that time").fill(learner.caught);
    await amount(page, "Your own answer").fill(learner.hand);
    if (index < five.length - 1) await page.getByRole("button", { name: "Add a learner" }).click();
  }
}

describe("the class", () => {
  for (const [size, options] of Object.entries({ phone, desk })) {
    it(`sets five learners side by side and says whose answer slipped on a ${size} (story 24)`, async () => {
      const { page, done } = await opened(options);
      await fillClass(page);
      await page.reload(); // in the middle of the last learner
      expect(await amount(page, "Time for the course").inputValue()).toBe("27.9");
      await look(page, `class-learner-${size}`);
      await page.getByRole("link", { name: "Done" }).click();

      const asked = (await core()).call("learners", {
        sprayer: "boomless",
        width: "26 ft",
        course_length: "113 ft",
        catch_covers: "all_tips",
        learners: five.map(({ name, time, caught, hand }) => ({ name, times: [`${time} s`], catches: [`${caught} fl oz`], hand_answer: `${hand} gal/ac` })),
      }) as { mean: { value: number }; highest_by: string };
      expect(asked.highest_by).toBe("Eli");
      await page.locator(".figure", { hasText: "Mean of the class" }).getByText(String(Number(asked.mean.value.toPrecision(4)))).first().waitFor();
      await page.locator(".spread-name", { hasText: "Eli" }).getByText("outside the others").waitFor();
      expect(await page.locator(".spread-name").count()).toBe(5);
      await page.getByText("Bo: 115 gal/ac comes from a shortcut that does not fit this course.").waitFor();
      await page.getByText("Ada: 13 gal/ac is right.").waitFor();
      await page.getByText("Where the spread comes from").waitFor();
      await look(page, `class-results-${size}`);

      await page.getByRole("button", { name: "Save this class" }).click();
      await page.getByText(/^Saved on/).waitFor();
      await page.getByText("Bo: 115 gal/ac comes from a shortcut").waitFor();
      await page.goto(`${host.url}#/class`);
      await page.getByRole("link", { name: /Spring class/ }).waitFor();
      expect(await page.getByText("Going on").count()).toBe(0);
      await look(page, `class-front-${size}`);
      await done();
    });
  }

  it("refuses a zero time at its own field and keeps the rest", async () => {
    const { page, done } = await opened(phone);
    await page.goto(`${host.url}#/class`);
    await page.getByRole("button", { name: "Begin a class" }).click();
    await amount(page, "Width served").fill("5");
    await amount(page, "Course length").fill("68");
    await page.getByRole("button", { name: "Add a learner" }).click();
    await amount(page, "Caught in that time").fill("16");
    await amount(page, "Time for the course").fill("0");
    const wrong = page.locator(".field.wrong");
    await wrong.locator(".error").waitFor();
    expect(await wrong.locator("label").first().textContent()).toContain("Time for the course");
    await amount(page, "Time for the course").fill("15");
    await page.locator(".figure", { hasText: "Output" }).first().waitFor();
    expect(await wrong.count()).toBe(0);
    await done();
  });

  it("gives everybody the same sheet for the same number, and judges answers", async () => {
    const one = await opened(phone);
    const two = await opened(desk);
    const sheet = async (page: Page) => {
      await page.goto(`${host.url}#/class/practice`);
      await amount(page, "Sheet number").fill("4711");
      await amount(page, "How many problems").fill("4");
      await page.getByText("Sheet 4711.").waitFor();
      await expect.poll(() => page.locator(".problem").count()).toBe(4);
      return page.locator(".problem-text").allTextContents();
    };
    const texts = await sheet(one.page);
    expect(await sheet(two.page)).toEqual(texts);
    expect(new Set(texts).size).toBe(4);

    const { page } = one;
    const { problems } = (await core()).call("practice", { seed: 4711, count: 4, units: "us" }) as { problems: Array<{ answer: { value: number; unit: string }; common_mistake: { text: string; wrong_answer: number } }> };
    const key = (index: number) => problems[index]?.answer ?? { value: 0, unit: "" };
    const box = (index: number) => page.locator(".problem").nth(index).getByRole("textbox");
    await box(0).fill(String(key(0).value));
    await box(1).fill(String(problems[1]?.common_mistake.wrong_answer)); // ounces read as gallons per acre
    await box(2).fill(`${key(2).value * 10}`);
    await page.reload();
    expect(await box(1).inputValue()).toBe(String(problems[1]?.common_mistake.wrong_answer));
    expect(await page.locator(".verdict").count()).toBe(0); // nothing is told before it is asked
    await page.getByRole("button", { name: "Check my answers" }).click();
    await page.locator(".problem").nth(0).getByText("Right.").waitFor();
    await page.locator(".problem").nth(1).getByText("A slip that many make.").waitFor();
    await page.locator(".problem").nth(1).getByText(/read as gallons per acre/).waitFor();
    await page.locator(".problem").nth(2).getByText("A slip that many make.").waitFor(); // the decimal point
    await page.getByText("1 right of 3 answered").waitFor();
    await page.getByRole("button", { name: "Show how problem 2 is worked" }).click();
    await page.locator(".problem").nth(1).locator(".key").getByText("gal x 43560", { exact: false }).waitFor();
    await look(page, "class-practice-phone");
    await look(two.page, "class-practice-desk");
    await one.done();
    await two.done();
  });

  it("prints the sheet without the key, and the key apart, as PDF", async () => {
    const { page, done } = await opened(desk);
    await page.goto(`${host.url}#/class/practice`);
    await amount(page, "Sheet number").fill("4711");
    await amount(page, "How many problems").fill("3");
    await page.getByRole("radio", { name: /For a class/ }).check();
    await page.getByRole("link", { name: "Sheet for learners" }).click();
    await page.getByRole("heading", { level: 1, name: "Practice sheet" }).waitFor();
    await look(page, "paper-practice-desk");
    const sheet = await textOfPdf(page);
    expect(sheet).toContain("Sheet 4711.");
    expect(sheet).toContain("66 fl oz together"); // the figures of problem 2
    expect(sheet).not.toContain("8.022");
    expect(sheet).not.toContain("Field day"); // nothing of the frame
    await page.goBack();
    await page.getByRole("link", { name: "Key for the teacher" }).click();
    await page.getByRole("heading", { level: 1, name: "Key to the practice sheet" }).waitFor();
    const key = await textOfPdf(page);
    expect(key).toContain("8.022"); // 66 fl oz / 128 x 43560 / (20 ft x 140 ft)
    await done();
  });

  it("speaks Spanish and metric, by keyboard", async () => {
    const { page, done } = await opened(phone, { language: "es", units: "metric" });
    await page.goto(`${host.url}#/class/practice`);
    await page.getByRole("heading", { level: 1, name: "Problemas de práctica" }).waitFor();
    const { problems } = (await core()).call("practice", { seed: 1, count: 8, units: "metric" }) as { problems: Array<{ answer: { value: number; unit: string } }> };
    const first = problems[0]?.answer ?? { value: 0, unit: "" };
    const box = page.locator(".problem").first().getByRole("textbox");
    await box.focus();
    await page.keyboard.type(`${String(first.value).replace(".", ",")} ${first.unit}`);
    await page.getByRole("button", { name: "Revisar mis respuestas" }).focus();
    await page.keyboard.press("Enter");
    await page.getByText("1 correctas de 1 respondidas").waitFor();
    await page.locator(".problem-text", { hasText: /Una|Un |El / }).first().waitFor();
    await look(page, "class-practice-es-phone");
    await done();
  });
});

