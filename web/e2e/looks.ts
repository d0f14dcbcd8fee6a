// What every screen must hold: no fault that axe finds, text that carries numbers at 7:1, targets of 64 px.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Violation {
  id: string;
  nodes: Array<{ target: unknown; failureSummary?: string }>;
}

/** Sentences, one a fault; empty when the screen is as it must be. */
export async function faultsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe); // as a debugger may: the page's content policy forbids a script tag
  const violations = await page.evaluate(async () => {
    const runner = (globalThis as unknown as { axe: { run: (context: unknown, options: unknown) => Promise<{ violations: Violation[] }> } }).axe;
    const { violations: found } = await runner.run(document, { rules: { "color-contrast-enhanced": { enabled: true } }, resultTypes: ["violations"] });
    return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => `${JSON.stringify(node.target)} ${node.failureSummary ?? ""}`).join("; ")}`);
  });
  return [...violations, ...(await smallTargets(page))];
}

/** Things to press that are smaller than 64 px in either direction (text links in running text excepted). */
async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const small: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>("a[href], button, select, textarea, input:not([type=radio]):not([type=checkbox]):not([type=file]), label.choice, label.file, label.tick, summary")) {
      const box = element.getBoundingClientRect();
      if (box.width === 0 || element.closest("p") !== null || element.classList.contains("skip")) continue;
      if (box.width < 63.5 || box.height < 63.5) small.push(`target ${Math.round(box.width)} x ${Math.round(box.height)}: ${element.outerHTML.slice(0, 90)}`);
    }
    return small;
  });
}
