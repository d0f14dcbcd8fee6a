// One limit of the label: the figure, and beside it the place on the label where it stands. Left blank it
// is "not entered", which is never "no limit".
import type { JSX } from "preact";
import type { DropletLimitClass } from "@/core/operations.gen";
import { AmountField } from "@/parts/amount_field";
import { Pick, TextField, Tick } from "@/parts/fields";
import { say, useWords } from "@/words/words";
import type { CardStep } from "./card_form";
import type { LimitField, LimitText } from "./card_data";

export function LimitGroup({ fields, form, set, wrong }: CardStep & { fields: LimitField[] }): JSX.Element {
  const { jobs } = useWords();
  return (
    <>
      <p class="hint">{jobs.cards.limitsHint}</p>
      {fields.map((field) => (
        <OneLimit
          key={field.name}
          field={field}
          typed={form.limits[field.name] ?? {}}
          error={wrong(`limits.${field.name}.${field.sort === "reentry" ? "after" : "value"}`)}
          onTyped={(part) => set({ limits: { ...form.limits, [field.name]: { ...form.limits[field.name], ...part } } })}
        />
      ))}
    </>
  );
}

interface OneProps {
  field: LimitField;
  typed: LimitText;
  error: string | undefined;
  onTyped: (part: LimitText) => void;
}

function OneLimit({ field, typed, error, onTyped }: OneProps): JSX.Element {
  const { jobs } = useWords();
  const label = jobs.limits[field.name];
  return (
    <fieldset class={field.sort === "words" ? "limit-entry words" : "limit-entry"}>
      <legend class="visually-hidden">{label}</legend>
      <LimitValue field={field} label={label} typed={typed} error={error} onTyped={onTyped} />
      <TextField label={jobs.cards.where} value={typed.where} onValue={(where) => onTyped({ where })} />
    </fieldset>
  );
}

function LimitValue({ field, label, typed, error, onTyped }: OneProps & { label: string }): JSX.Element {
  const { jobs } = useWords();
  const value = typed.value ?? "";
  const put = (text: string) => onTyped({ value: text });
  if (field.sort === "words") return <TextField label={label} long value={value} onValue={put} />;
  if (field.sort === "count") return <TextField label={label} whole value={value} error={value !== "" && !/^\d{1,4}$/.test(value.trim()) ? jobs.cards.countWrong : undefined} onValue={put} />;
  if (field.sort === "droplets") {
    const options = Object.entries(jobs.cards.droplets).map(([name, text]) => ({ value: name as DropletLimitClass, label: text }));
    return <Pick label={label} value={(value || undefined) as DropletLimitClass | undefined} options={options} onValue={put} />;
  }
  return (
    <div>
      <AmountField label={label} units={field.units ?? { us: ["h", "d"], metric: ["h", "d"] }} value={value} error={error} onValue={put} />
      {field.sort === "reentry" && <Tick label={jobs.cards.untilDry} checked={typed.until_dry === true} onValue={(until_dry) => onTyped({ until_dry })} />}
    </div>
  );
}

export function OtherLimits({ form, set }: CardStep): JSX.Element {
  const { jobs } = useWords();
  const list = form.other;
  const change = (at: number, part: LimitText) => set({ other: list.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  return (
    <>
      {list.map((one, index) => (
        <fieldset key={index} class="limit-entry words">
          <legend class="visually-hidden">{say(jobs.cards.otherNumber, index + 1)}</legend>
          <TextField label={say(jobs.cards.otherNumber, index + 1)} long value={one.value} onValue={(value) => change(index, { value })} />
          <TextField label={jobs.cards.where} value={one.where} onValue={(where) => change(index, { where })} />
        </fieldset>
      ))}
      <button type="button" class="button wide" onClick={() => set({ other: [...list, { value: "", where: "" }] })}>
        {jobs.cards.addOther}
      </button>
    </>
  );
}
