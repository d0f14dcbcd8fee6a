// The plain fields: words, a whole number, a date, one of several.
import { useId } from "preact/hooks";
import type { JSX } from "preact";
import { useWords } from "@/words/words";
import { FieldFrame } from "./field_frame";

interface Common {
  label: string;
  hint?: string;
  error?: string;
  required?: boolean;
}

const describedBy = (id: string, { hint, error }: Common) => (error ? `${id}-error` : hint ? `${id}-hint` : undefined);

interface TextProps extends Common {
  value: string | undefined;
  onValue: (value: string) => void;
  long?: boolean;
  type?: "text" | "tel" | "search" | "datetime-local" | "date" | "time";
  /** Whole numbers get the number keypad. */
  whole?: boolean;
}

export function TextField({ value = "", onValue, long, type = "text", whole, ...common }: TextProps): JSX.Element {
  const id = useId();
  const shared = { id, class: "box", value, "aria-describedby": describedBy(id, common), "aria-invalid": common.error ? true : undefined };
  return (
    <FieldFrame id={id} {...common}>
      {long ? (
        <textarea {...shared} rows={3} onInput={(event) => onValue(event.currentTarget.value)} />
      ) : (
        <input {...shared} type={type as "text"} inputMode={whole ? "numeric" : undefined} autocomplete="off" onInput={(event) => onValue(event.currentTarget.value)} />
      )}
    </FieldFrame>
  );
}

export interface Option<T extends string> {
  value: T;
  label: string;
  hint?: string;
}

interface ChoiceProps<T extends string> extends Common {
  value: T | undefined;
  options: Array<Option<T>>;
  onValue: (value: T) => void;
}

/** One of several as big buttons, all in sight. For up to about seven. */
export function Choice<T extends string>({ value, options, onValue, ...common }: ChoiceProps<T>): JSX.Element {
  const id = useId();
  return (
    <FieldFrame id={id} group {...common}>
      <div class="choices">
        {options.map((option) => (
          <label key={option.value} class={option.value === value ? "choice chosen" : "choice"}>
            <input type="radio" name={id} value={option.value} checked={option.value === value} onChange={() => onValue(option.value)} />
            <span>
              {option.label}
              {option.hint && <small>{option.hint}</small>}
            </span>
          </label>
        ))}
      </div>
    </FieldFrame>
  );
}

/** One of many: the phone's own list. */
export function Pick<T extends string>({ value, options, onValue, ...common }: ChoiceProps<T>): JSX.Element {
  const id = useId();
  const { common: words } = useWords();
  return (
    <FieldFrame id={id} {...common}>
      <select id={id} class="box" value={value ?? ""} aria-describedby={describedBy(id, common)} onChange={(event) => onValue(event.currentTarget.value as T)}>
        {(value === undefined || common.required === false) && <option value="">{words.notEntered}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

interface TickProps {
  label: string;
  hint?: string;
  checked: boolean;
  onValue: (checked: boolean) => void;
}

/** Something to tick, with a box as wide as a thumb. */
export function Tick({ label, hint, checked, onValue }: TickProps): JSX.Element {
  const id = useId();
  return (
    <label class={checked ? "tick chosen" : "tick"} for={id}>
      <input id={id} type="checkbox" checked={checked} onChange={(event) => onValue(event.currentTarget.checked)} />
      <span>
        {label}
        {hint && <small>{hint}</small>}
      </span>
    </label>
  );
}
