// A notebook to begin a journey with: entries sealed by the core in this process, brought in as a person
// brings a copy in.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { open } from "@wasm/swathbook.mjs";
import type { Bodies, Kind } from "../src/notebook/things";

const wasm = fileURLToPath(new URL("../../build/wasm/wasm/swathbook.wasm", import.meta.url));
export const core = () => open(readFileSync(wasm));

export interface Given<K extends Kind = Kind> {
  kind: K;
  subject: string;
  body: Bodies[K];
}

/** A thing of a kind under a short number; the same number is the same thing. */
export const idOf = (number: number): string => `019d729f-4c80-7b3e-a1aa-${String(number).padStart(12, "0")}`;
export const given = <K extends Kind>(kind: K, number: number, body: Bodies[K]): Given<K> => ({ kind, subject: idOf(number), body });

/** Answers an operation in this process, as the app would. */
export async function answerOf(operation: string, request: object): Promise<never> {
  return (await core()).call(operation, request) as never;
}

const device = "019d729a-1b20-7e44-9d0c-0c5f3a2b7c55";
const randomFor = (index: number) => index.toString(16).padStart(20, "0");

/** The travelling text of entries by one other person, a second apart. */
export async function entriesOf(list: Given[], author = "Ada Quill", from = Date.now() - 86_400_000): Promise<string> {
  const module = await core();
  module.book("open", { device, now_ms: from });
  let text = "";
  list.forEach(({ kind, subject, body }, index) => {
    const now_ms = from + 1000 * index;
    const { entries } = module.book("seal", { drafts: [{ kind, subject, author, body: body as never }], now_ms, random: [randomFor(index + 1)] });
    module.book("add", { entries, now_ms });
    text += entries;
  });
  return text;
}

/** Takes entries into the notebook of the page, by its own door. */
export async function bringIn(page: Page, url: string, list: Given[]): Promise<void> {
  const text = await entriesOf(list);
  await page.goto(`${url}#/phone`);
  await page.locator("input[type=file]").setInputFiles({ name: "notebook.txt", mimeType: "text/plain", buffer: Buffer.from(text) });
  await page.getByText(/entries added|anotaciones agregadas|agregad/).waitFor();
}

/** Who writes, language and units, set as if said in the settings before. */
export async function settingsOf(page: Page, change: Record<string, unknown>): Promise<void> {
  await page.addInitScript((wanted) => {
    const key = "swathbook settings";
    const before = JSON.parse(localStorage.getItem(key) ?? "{}") as object;
    localStorage.setItem(key, JSON.stringify({ ...before, ...wanted }));
  }, change);
}

/** Every entry of the page's notebook as travelling text. */
export async function entriesIn(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open("swathbook");
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error as Error);
    });
    const rows = await new Promise<Array<{ text: string }>>((resolve, reject) => {
      const request = database.transaction("entries").objectStore("entries").getAll();
      request.onsuccess = () => resolve(request.result as Array<{ text: string }>);
      request.onerror = () => reject(request.error as Error);
    });
    database.close();
    return rows.map((row) => row.text).join("");
  });
}
