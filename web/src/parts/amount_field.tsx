// One measured amount: a big box for the digits and the unit beside it. What is typed stays as typed; the
// core reads it, comma or point, and says what it cannot read.
import { useId, useState } from "preact/hooks";
import type { JSX } from "preact";
import { useSettings } from "@/app/settings";
import { say, useWords } from "@/words/words";
import { FieldFrame } from "./field_frame";

/** What an amount field holds: "26 ft". The core takes it so. Empty: not entered. */
export type AmountText = string;

/** Units to choose from, the usual one first, for people who count in US units and in metric ones. */
export interface UnitChoice {
  us: string[];
  metric: string[];
}

export const unitsOf = {
  length: { us: ["ft", "in", "yd", "m"], metric: ["m", "cm", "ft"] },
  spacing: { us: ["in", "ft", "cm"], metric: ["cm", "m", "in"] },
  time: { us: ["s", "min"], metric: ["s", "min"] },
  speed: { us: ["mph", "ft/min", "km/h"], metric: ["km/h", "m/s", "mph"] },
  wind: { us: ["mph", "knots", "m/s"], metric: ["m/s", "km/h", "knots"] },
  caught: { us: ["fl oz", "mL", "qt", "gal"], metric: ["mL", "L", "fl oz"] },
  tank: { us: ["gal", "L"], metric: ["L", "gal"] },
  flow: { us: ["gal/min", "fl oz/min", "L/min"], metric: ["L/min", "mL/min", "gal/min"] },
  pressure: { us: ["psi", "bar", "kPa"], metric: ["bar", "kPa", "psi"] },
  area: { us: ["ac", "ft2", "ha"], metric: ["ha", "m2", "ac"] },
  mixPerArea: { us: ["gal/ac", "L/ha"], metric: ["L/ha", "gal/ac"] },
  rate: {
    us: ["qt/ac", "fl oz/ac", "pt/ac", "gal/ac", "lb/ac", "oz wt/ac", "% v/v", "lb/100 gal", "fl oz/100 gal", "lb a.e./ac", "lb a.i./ac"],
    metric: ["L/ha", "mL/ha", "kg/ha", "g/ha", "% v/v", "kg a.e./ha", "kg a.i./ha"],
  },
  strength: { us: ["lb a.e./gal", "lb a.i./gal", "g a.e./L", "g a.i./L"], metric: ["g a.e./L", "g a.i./L", "lb a.e./gal"] },
  percent: { us: ["%"], metric: ["%"] },
  temperature: { us: ["°F", "°C"], metric: ["°C", "°F"] },
  height: { us: ["in", "ft", "m"], metric: ["m", "cm", "in"] },
  after: { us: ["h", "d", "min"], metric: ["h", "d", "min"] },
  hardness: { us: ["ppm"], metric: ["ppm"] },
  dose: { us: ["mL per cut"], metric: ["mL per cut"] },
} satisfies Record<string, UnitChoice>;

/** Splits "26 ft" into digits and unit; the unit is what follows the first space. */
export function splitAmount(text: AmountText): { digits: string; unit: string } {
  const at = text.indexOf(" ");
  return at < 0 ? { digits: text, unit: "" } : { digits: text.slice(0, at), unit: text.slice(at + 1) };
}

const isPlainNumber = (text: string) => /^[\d.,:/\-–½¼¾⅓⅔\s]*$/.test(text);

interface Props {
  label: string;
  value: AmountText | undefined;
  onValue: (value: AmountText) => void;
  units: UnitChoice;
  hint?: string;
  error?: string;
  required?: boolean;
  name?: string;
  /** Shown greyed in the empty box. */
  sample?: string;
}

export function AmountField({ label, value = "", onValue, units, hint, error, required, name, sample }: Props): JSX.Element {
  const id = useId();
  const { common } = useWords();
  const { units: system } = useSettings();
  const choices = withUnit(units[system], value);
  const [wanted, setWanted] = useState<string>(); // a unit chosen before any digit was typed
  const { digits, unit: found } = parts(value, choices);
  const unit = digits === "" && wanted !== undefined && choices.includes(wanted) ? wanted : found;
  const put = (typed: string, chosen: string) => onValue(typed.trim() === "" ? "" : isPlainNumber(typed) ? `${typed.trim()} ${chosen}` : typed);
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} required={required}>
      <div class="amount">
        <input
          id={id}
          name={name}
          class="box"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          enterkeyhint="next"
          value={digits}
          placeholder={sample}
          aria-describedby={error ? `${id}-error` : hint ? `${id}-hint` : undefined}
          aria-invalid={error ? true : undefined}
          onInput={(event) => put(event.currentTarget.value, unit)}
        />
        {choices.length === 1 ? (
          <span class="unit only">{unit}</span>
        ) : (
          <select class="unit" aria-label={say(common.unitOf, label)} value={unit} onChange={(event) => {
              setWanted(event.currentTarget.value);
              put(digits, event.currentTarget.value);
            }}>
            {choices.map((choice) => (
              <option key={choice} value={choice}>
                {choice}
              </option>
            ))}
          </select>
        )}
      </div>
    </FieldFrame>
  );
}

// A unit that is not offered (from another phone's settings) is offered as well: it is never changed silently.
function withUnit(offered: string[], value: AmountText): string[] {
  const { digits, unit } = splitAmount(value);
  return unit !== "" && isPlainNumber(digits) && isKnownTail(unit) && !offered.includes(unit) ? [...offered, unit] : offered;
}

const isKnownTail = (unit: string) => Object.values(unitsOf).some(({ us, metric }: UnitChoice) => us.includes(unit) || metric.includes(unit));

// "26 ft" stands as 26 in the box and ft beside it; "5 ft 2 in" stands as it was typed.
function parts(value: AmountText, choices: string[]): { digits: string; unit: string } {
  const { digits, unit } = splitAmount(value);
  if (choices.includes(unit) && isPlainNumber(digits)) return { digits, unit };
  return { digits: value, unit: choices[0] ?? "" };
}
