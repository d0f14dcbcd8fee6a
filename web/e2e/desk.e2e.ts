// The page with `swathbook serve` behind it: entries go both ways, a cut and a restart lose nothing.
import { execFileSync, spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, Page } from "playwright-core";
import { launch, phone } from "./browser";
import { addSprayer, goTo, personAt, sprayers } from "./people";

const root = fileURLToPath(new URL("../..", import.meta.url));
const program = process.env["SWATHBOOK"] ?? join(root, "build/dev/cli/swathbook");
const folder = mkdtempSync(join(tmpdir(), "swathbook-desk-"));
const notebook = join(folder, "season.gpkg");

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
  execFileSync(program, ["notebook", "new", notebook, "--author", "Ada Quill"]);
});
afterAll(async () => browser.close());

interface Running {
  url: string;
  port: string;
  process: ChildProcess;
}

async function serve(port = "0"): Promise<Running> {
  const child = spawn(program, ["serve", "--notebook", notebook, "--port", port, "--web", join(root, "web/dist")]);
  const url = await new Promise<string>((resolve, reject) => {
    let said = "";
    child.stdout.on("data", (text: Buffer) => {
      said += text.toString();
      const found = /http:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    child.on("exit", (status) => reject(new Error(`swathbook serve ended with ${status}: ${said}`)));
  });
  return { url, port: new URL(url).port, process: child };
}

async function end({ process: child }: Running, signal: "SIGTERM" | "SIGKILL"): Promise<void> {
  const gone = new Promise((resolve) => child.on("exit", resolve));
  child.kill(signal);
  await gone;
}

async function syncState(page: Page, words: string): Promise<void> {
  await goTo(page, "#/phone");
  const button = page.getByRole("button", { name: "Sync now" });
  // Entries that another program wrote show only after this sync: its time is newer than what was said before.
  const before = await page.evaluate(() => performance.now());
  await button.click();
  await page.waitForFunction((since) => performance.getEntriesByName("swathbook synced").some(({ startTime }) => startTime > since), before);
  await page.getByText(words).waitFor();
}

const onDesk = () => execFileSync(program, ["notebook", "list", "--notebook", notebook]).toString();

describe("with the desk", () => {
  it("sends and fetches, and a killed server loses nothing", async () => {
    let desk = await serve();
    const { page, context, check } = await personAt(browser, desk.url, "Ana Crews", phone);
    expect(new URL(page.url()).hash).not.toContain("token"); // not left in the address bar or the history
    await addSprayer(page, "Boom rig");
    await syncState(page, "Both have the same");
    expect(onDesk()).toContain("Boom rig");
    execFileSync(program, ["notebook", "add", "sprayer", "name=Handgun", "--notebook", notebook]);
    await syncState(page, "Both have the same");
    expect(await sprayers(page)).toEqual(["Boom rig", "Handgun"]);

    await end(desk, "SIGKILL");
    await addSprayer(page, "Band rig");
    await syncState(page, "The server does not answer now");
    await page.getByText("1 thing waits to be sent.").waitFor();
    desk = await serve(desk.port);
    await syncState(page, "The server does not know this page");
    await page.goto(desk.url); // the new run has a new token
    await page.reload();
    await syncState(page, "Both have the same");
    expect(onDesk()).toContain("Band rig");
    expect(execFileSync(program, ["notebook", "check", "--notebook", notebook]).toString()).toContain("sound");
    check();
    await context.close();
    await end(desk, "SIGTERM");
  });
});
