// What a page gives when it is printed: Chromium's own PDF, read back by poppler.
import { execFileSync } from "node:child_process";
import type { Page } from "playwright-core";

export async function textOfPdf(page: Page): Promise<string> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const text = execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf }).toString();
  return text.replace(/\s+/g, " ");
}
