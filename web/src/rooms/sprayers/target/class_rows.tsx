// The droplet classes of the tips in use, pressure by pressure, as their maker prints them.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { DropletClass } from "@/core/operations.gen";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Pick } from "@/parts/fields";
import { say, useWords } from "@/words/words";

export interface ClassRow {
  from: string;
  to: string;
  class: DropletClass | "";
}

export function ClassRows({ rows, onRows }: { rows: ClassRow[]; onRows: (rows: ClassRow[]) => void }): JSX.Element {
  const { sprayers, common } = useWords();
  const words = sprayers.target;
  const [open, setOpen] = useState(rows.length > 0);
  const put = (index: number, change: Partial<ClassRow>) => onRows(rows.map((row, place) => (place === index ? { ...row, ...change } : row)));
  const options = Object.entries(words.classNames).map(([value, label]) => ({ value: value as DropletClass, label: `${value}, ${label}` }));
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.classes}</summary>
      {rows.map((row, index) => (
        <div key={index} class="class-row">
          <AmountField label={words.classFrom} value={row.from} units={unitsOf.pressure} onValue={(from) => put(index, { from })} />
          <AmountField label={words.classTo} value={row.to} units={unitsOf.pressure} onValue={(to) => put(index, { to })} />
          <Pick label={words.className} value={row.class || undefined} options={options} onValue={(chosen) => put(index, { class: chosen })} />
          <button type="button" class="button" aria-label={say(words.removeClass, index + 1)} onClick={() => onRows(rows.filter((_, place) => place !== index))}>
            {common.remove}
          </button>
        </div>
      ))}
      <button type="button" class="button wide" onClick={() => onRows([...rows, { from: "", to: "", class: "" }])}>
        {words.addClass}
      </button>
    </details>
  );
}
