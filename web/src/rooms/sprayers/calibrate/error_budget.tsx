// Where the doubt comes from: one bar a source, the longest first, in words.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { measured, showNumber } from "@/core/quantity";
import { say, useWords } from "@/words/words";

export function ErrorBudget({ of }: { of: Asked<"calibrate"> }): JSX.Element | null {
  const { sprayers } = useWords();
  const words = sprayers.calibrate.result;
  const lines = of.answer?.error_budget ?? [];
  if (lines.length === 0) return null;
  return (
    <section class="budget">
      <h3>{words.budget}</h3>
      <p class="hint">{words.budgetHint}</p>
      <ul>
        {lines.map(({ source, text, plus_minus: spread, share, repeats_help: help }) => {
          const part = measured(share)?.value ?? 0;
          return (
            <li key={source}>
              <span class="budget-text">{text}</span>
              <strong>{say(words.budgetShare, showNumber(part, 2))}</strong>
              <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
                <rect width={part} height="8" />
              </svg>
              <small>
                {say(words.budgetAlone, showNumber(measured(spread)?.value ?? 0, 2))}; {help ? words.repeatsHelp : words.repeatsNot}
              </small>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
