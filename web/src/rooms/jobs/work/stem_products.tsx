// What is in the bottle for stem work, and the most that each label allows on an area.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Asked } from "@/core/core";
import type { ProductCard, StemProduct } from "@/core/operations.gen";
import { useThings } from "@/notebook/notebook";
import type { JobProduct } from "@/notebook/things";
import { AmountField, type UnitChoice } from "@/parts/amount_field";
import { Pick } from "@/parts/fields";
import { say, useWords } from "@/words/words";
import { QuickCard } from "../cards/quick_card";
import { errorAt, rateText } from "../job_data";

export type StemRow = Omit<StemProduct, "card"> & { card_id: string; name?: string };

const perArea: UnitChoice = { us: ["lb a.e./ac", "lb a.i./ac", "fl oz/ac", "qt/ac", "gal/ac"], metric: ["kg a.e./ha", "kg a.i./ha", "L/ha", "mL/ha"] };

type CardOf = (product: JobProduct) => ProductCard | undefined;
const cardFor = (row: StemRow, cardOf: CardOf) => cardOf({ card_id: row.card_id, name: row.name, rate: "" });

export function stemProducts(rows: StemRow[], cardOf: CardOf): StemProduct[] {
  return rows.flatMap((row) => {
    const card = cardFor(row, cardOf);
    const { card_id: _id, name: _name, ...rest } = row;
    return card === undefined ? [] : [{ ...rest, card }];
  });
}

interface Props {
  rows: StemRow[];
  cardOf: CardOf;
  /** Changes the list as it is at that moment. */
  onRows: (change: (before: StemRow[]) => StemRow[]) => void;
  asked: Asked | undefined;
}

export function StemProducts({ rows, cardOf, onRows, asked }: Props): JSX.Element {
  const { common, jobs } = useWords();
  const change = (at: number, part: Partial<StemRow>) => onRows((before) => before.map((row, index) => (index === at ? { ...row, ...part } : row)));
  return (
    <>
      {rows.map((row, index) => (
        <fieldset key={index} class="product">
          <legend>{say(jobs.plan.productNumber, index + 1)}</legend>
          <OneProduct row={row} asked={asked} field={`products[${index}]`} onChange={(part) => change(index, part)} />
          {rows.length > 1 && (
            <button type="button" class="button quiet" onClick={() => onRows((before) => before.filter((_, other) => other !== index))}>
              {common.remove} {cardFor(row, cardOf)?.name}
            </button>
          )}
        </fieldset>
      ))}
      <button type="button" class="button wide" onClick={() => onRows((before) => [...before, { card_id: "" }])}>
        {jobs.plan.anotherProduct}
      </button>
    </>
  );
}

interface OneProps {
  row: StemRow;
  asked: Asked | undefined;
  field: string;
  onChange: (part: Partial<StemRow>) => void;
}

function OneProduct({ row, asked, field, onChange }: OneProps): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const [typing, setTyping] = useState(cards.length === 0);
  const options = cards.map(({ id, fields }) => ({ value: id, label: fields.card?.name ?? fields.name ?? jobs.noName }));
  const ceiling = rateText(row.ceiling);
  const applied = rateText(row.applied_this_year);
  const share = typeof row.share === "string" ? row.share : "";
  return (
    <>
      {options.length > 0 && (
        <Pick label={jobs.plan.card} value={row.card_id || undefined} options={options} onValue={(id) => onChange({ card_id: id, name: options.find(({ value }) => value === id)?.label })} />
      )}
      {row.card_id === "" && typing && <QuickCard onMade={(card_id, name) => onChange({ card_id, name })} />}
      {row.card_id === "" && !typing && (
        <button type="button" class="button wide" onClick={() => setTyping(true)}>
          {jobs.plan.newCard}
        </button>
      )}
      <div class="two">
        <AmountField label={jobs.stems.ceiling} hint={jobs.stems.ceilingHint} required={false} units={perArea} value={ceiling} error={errorAt(asked, `${field}.ceiling`, ceiling)} onValue={(text) => onChange({ ceiling: text || undefined })} />
        <AmountField label={jobs.plan.applied} hint={jobs.plan.appliedHint} required={false} units={perArea} value={applied} error={errorAt(asked, `${field}.applied_this_year`, applied)} onValue={(text) => onChange({ applied_this_year: text || undefined })} />
        <AmountField label={jobs.stems.share} hint={jobs.stems.shareHint} required={false} units={{ us: ["% v/v"], metric: ["% v/v"] }} value={share} error={errorAt(asked, `${field}.share`, share)} onValue={(text) => onChange({ share: text || undefined })} />
      </div>
    </>
  );
}

