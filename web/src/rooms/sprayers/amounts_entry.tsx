// Amounts one after the other: tip by tip or catch by catch, with keys as wide as a thumb. The unit is chosen
// once; an empty place is one that was skipped.
import type { JSX } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { useSettings } from "@/app/settings";
import { Keypad } from "@/parts/keypad";
import { say, useWords } from "@/words/words";

interface Props {
  values: string[];
  /** How many places there are. */
  count: number;
  at: number;
  onChange: (values: string[], at: number) => void;
  unit: string;
  /** Units to choose from: the choice is for all places. */
  units: string[];
  onUnit: (unit: string) => void;
  label: (index: number) => string;
  nextLabel: string;
  /** What the core says of a place. */
  problem?: (index: number) => string | undefined;
}

export function AmountsEntry({ values, count, at, onChange, unit, units, onUnit, label, nextLabel, problem }: Props): JSX.Element {
  const { language } = useSettings();
  const words = useWords().sprayers.calibrate.catch;
  const id = useId();
  const box = useRef<HTMLInputElement>(null);
  const moved = useRef(false);
  const here = Math.min(at, count - 1);
  const value = values[here] ?? "";
  const fault = problem?.(here);
  useEffect(() => {
    if (moved.current) box.current?.focus({ preventScroll: true });
  }, [here]);
  const put = (digits: string) => onChange(withValue(values, here, digits), here);
  const move = (to: number, digits = value) => {
    moved.current = true;
    onChange(withValue(values, here, digits), Math.min(Math.max(0, to), count - 1));
  };
  const before = here > 0 ? (values[here - 1] ?? "") : "";
  const entered = values.slice(0, count).filter((text) => text.trim() !== "").length;
  return (
    <div class="entry">
      <ol class="places">
        {Array.from({ length: count }, (_, index) => (
          <li key={index}>
            <button type="button" class={placeClass(index === here, values[index], problem?.(index))} aria-current={index === here ? "step" : undefined} onClick={() => move(index)}>
              <small>{label(index)}</small>
              <span>{values[index] || "–"}</span>
            </button>
          </li>
        ))}
      </ol>
      <div class="entry-keys">
        <label class="entry-label" for={id}>
          {label(here)}
        </label>
        <div class="amount entry-line">
            <input
              ref={box}
              id={id}
              class="box"
              type="text"
              inputMode="none"
              autocomplete="off"
              value={value}
              aria-invalid={fault ? true : undefined}
              onInput={(event) => put(event.currentTarget.value)}
              onKeyDown={(event) => event.key === "Enter" && move(here + 1)}
            />
            <select class="unit" aria-label={words.unit} value={unit} onChange={(event) => onUnit(event.currentTarget.value)}>
              {[...new Set([...units, unit])].map((choice) => (
                <option key={choice} value={choice}>
                  {choice}
                </option>
              ))}
            </select>
        </div>
        {fault && <p class="error">{fault}</p>}
        <Keypad label={words.keypad} value={value} onValue={put} wipe={words.back} point={language === "es" ? "," : "."} />
        <div class="entry-acts">
          <button type="button" class="button" disabled={before === ""} onClick={() => move(here + 1, before)}>
            {words.same}
          </button>
          <button type="button" class="button" disabled={here >= count - 1} onClick={() => move(here + 1, "")}>
            {words.skip}
          </button>
          <button type="button" class="button main" disabled={here >= count - 1} onClick={() => move(here + 1)}>
            {nextLabel}
          </button>
        </div>
        <p class="hint" role="status">
          {say(words.ofCount, entered, count)}
        </p>
      </div>
    </div>
  );
}

function withValue(values: string[], index: number, digits: string): string[] {
  const next = Array.from({ length: Math.max(values.length, index + 1) }, (_, place) => values[place] ?? "");
  next[index] = digits;
  return next;
}

const placeClass = (current: boolean, value: string | undefined, fault: string | undefined): string =>
  ["place", current ? "current" : "", value ? "filled" : "", fault ? "faulty" : ""].filter(Boolean).join(" ");
