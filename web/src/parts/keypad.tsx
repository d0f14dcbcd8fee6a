// Number keys on the screen, for wet fingers and gloves: digits, point, wipe. A keyboard does as well.
import type { JSX } from "preact";

interface Props {
  label: string;
  value: string;
  onValue: (value: string) => void;
  wipe: string;
  /** "," where people write a comma. */
  point: "." | ",";
}

const digits = ["1", "2", "3", "4", "5", "6", "7", "8", "9"];
const longest = 9;

export function Keypad({ label, value, onValue, wipe, point }: Props): JSX.Element {
  return (
    <div class="keypad" role="group" aria-label={label}>
      {[...digits, point, "0"].map((key) => (
        <button key={key} type="button" class="key" onClick={() => onValue(pressed(value, key))}>
          {key}
        </button>
      ))}
      <button type="button" class="key" aria-label={wipe} onClick={() => onValue(value.slice(0, -1))}>
        <svg viewBox="0 0 24 24" width="32" height="32" fill="none" stroke="currentColor" stroke-width="2.5" aria-hidden="true">
          <path d="M9 5h12v14H9l-7-7zM12 9l6 6M18 9l-6 6" />
        </svg>
      </button>
    </div>
  );
}

/** What stands after a key: one point at most, and no more digits than anyone reads off a jug. */
export function pressed(value: string, key: string): string {
  if (value.length >= longest) return value;
  if (key !== "." && key !== ",") return value === "0" ? key : value + key;
  if (/[.,]/.test(value)) return value;
  return value === "" ? `0${key}` : value + key;
}
