// An amount with a thumb-wide key for less and one for more beside the box: for gloves, where a slider
// cannot be held. Stepping changes the digits that were typed, never the unit.
import type { JSX } from "preact";
import { say, useWords } from "@/words/words";
import { AmountField, splitAmount, type UnitChoice } from "./amount_field";

interface Props {
  label: string;
  value: string;
  units: UnitChoice;
  step: number;
  onValue: (value: string) => void;
  hint?: string;
  error?: string;
  required?: boolean;
}

/** The digits one step further; never below one step. Undefined when they are not one plain number. */
export function stepped(text: string, step: number): string | undefined {
  const { digits, unit } = splitAmount(text);
  if (!/^\d+([.,]\d+)?$/.test(digits) || /\s\d/.test(unit)) return undefined; // "5 ft 2 in" is two numbers
  const next = Number(digits.replace(",", ".")) + step;
  if (next < Math.abs(step)) return undefined;
  return `${String(Number(next.toFixed(4)))} ${unit}`;
}

export function StepperField({ step, ...field }: Props): JSX.Element {
  const { jobs } = useWords();
  const move = (by: number) => {
    const next = stepped(field.value, by);
    if (next !== undefined) field.onValue(next);
  };
  return (
    <div class="stepper">
      <AmountField {...field} />
      <div class="stepper-keys">
        <button type="button" class="button go" aria-label={say(jobs.stepper.lessOf, field.label)} disabled={stepped(field.value, -step) === undefined} onClick={() => move(-step)}>
          − {jobs.stepper.less}
        </button>
        <button type="button" class="button go" aria-label={say(jobs.stepper.moreOf, field.label)} disabled={stepped(field.value, step) === undefined} onClick={() => move(step)}>
          + {jobs.stepper.more}
        </button>
      </div>
    </div>
  );
}
