// What goes in: each product with its rate on the label's own basis, its jug, and what this ground had of
// it earlier this year.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { address } from "@/app/route";
import type { Asked } from "@/core/core";
import type { ProductCard } from "@/core/operations.gen";
import { useThings } from "@/notebook/notebook";
import type { JobProduct } from "@/notebook/things";
import { AmountField, unitsOf, type UnitChoice } from "@/parts/amount_field";
import { Choice, Pick, TextField } from "@/parts/fields";
import { say, useWords } from "@/words/words";
import { errorAt, rateText, whole } from "../job_data";
import { QuickCard } from "../cards/quick_card";

const isPerArea = (unit: string) => /\/(ac|ha)$/.test(unit);
const perArea: UnitChoice = { us: unitsOf.rate.us.filter(isPerArea), metric: unitsOf.rate.metric.filter(isPerArea) };

interface Props {
  products: JobProduct[];
  cardOf: (product: JobProduct) => ProductCard | undefined;
  /** Changes the list as it is at that moment: a card may be saved while the next box is typed in. */
  onProducts: (change: (before: JobProduct[]) => JobProduct[]) => void;
  /** The answer they are part of, for what the core says about a field. */
  asked: Asked | undefined;
  /** The usual unit first: percent for spot work. */
  rates?: UnitChoice;
  /** Only bands are sprayed: each rate per area says which ground it counts. */
  banded?: boolean;
}

export function ProductsForm({ products, cardOf, onProducts, asked, rates = unitsOf.rate, banded = false }: Props): JSX.Element {
  const { common, jobs } = useWords();
  const change = (at: number, part: Partial<JobProduct>) => onProducts((before) => before.map((product, index) => (index === at ? { ...product, ...part } : product)));
  // The core counts only products that have a card.
  const placeOf = (at: number) => products.slice(0, at).filter((product) => cardOf(product) !== undefined).length;
  return (
    <>
      {products.map((product, index) => (
        <fieldset key={index} class="product">
          <legend>{say(jobs.plan.productNumber, index + 1)}</legend>
          <ProductFields product={product} card={cardOf(product)} rates={rates} banded={banded} asked={asked} field={`products[${placeOf(index)}]`} onChange={(part) => change(index, part)} />
          <button type="button" class="button quiet" onClick={() => onProducts((before) => before.filter((_, other) => other !== index))}>
            {common.remove} {cardOf(product)?.name ?? product.name ?? ""}
          </button>
        </fieldset>
      ))}
      <button type="button" class="button wide" onClick={() => onProducts((before) => [...before, { card_id: "", rate: "" }])}>
        {products.length === 0 ? jobs.plan.firstProduct : jobs.plan.anotherProduct}
      </button>
    </>
  );
}

interface FieldsProps {
  product: JobProduct;
  card: ProductCard | undefined;
  rates: UnitChoice;
  banded: boolean;
  asked: Asked | undefined;
  field: string;
  onChange: (part: Partial<JobProduct>) => void;
}

function ProductFields({ product, card, rates, banded, asked, field, onChange }: FieldsProps): JSX.Element {
  const { jobs, common } = useWords();
  const [more, setMore] = useState(false);
  const rate = rateText(product.rate);
  const applied = rateText(product.applied_this_year);
  const times = product.applications_this_year;
  return (
    <>
      <CardChoice product={product} card={card} onChange={onChange} />
      <AmountField label={jobs.plan.rate} hint={jobs.plan.rateHint} units={rates} value={rate} error={errorAt(asked, `${field}.rate`, rate)} onValue={(text) => onChange({ rate: text })} />
      {banded && <Choice label={jobs.plan.rateCounts} value={product.counts} options={(["treated", "field"] as const).map((value) => ({ value, label: jobs.plan.countsOf[value] }))} onValue={(counts) => onChange({ counts })} />}
      <div class="two">
        <AmountField
          label={jobs.plan.applied}
          hint={jobs.plan.appliedHint}
          required={false}
          units={perArea}
          value={applied}
          error={errorAt(asked, `${field}.applied_this_year`, applied)}
          onValue={(text) => onChange({ applied_this_year: text || undefined })}
        />
        <TextField label={jobs.plan.times} hint={jobs.plan.timesHint} required={false} whole value={times === undefined ? "" : String(times)} onValue={(text) => onChange({ applications_this_year: whole(text) })} />
      </div>
      {card?.form !== "dry" && (
        <AmountField
          label={jobs.plan.jug}
          hint={jobs.plan.jugHint}
          required={false}
          units={unitsOf.tank}
          value={product.jug as string | undefined}
          error={errorAt(asked, `${field}.jug`, product.jug)}
          onValue={(jug) => onChange({ jug: jug || undefined })}
        />
      )}
      <button type="button" class="button quiet" aria-expanded={more} onClick={() => setMore(!more)}>
        {more ? common.less : jobs.plan.counted}
      </button>
      {more && <CountedIn product={product} card={card} onChange={onChange} />}
    </>
  );
}

function CardChoice({ product, card, onChange }: Pick3): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const [typing, setTyping] = useState(cards.length === 0);
  const choose = (id: string) => {
    const found = cards.find((thing) => thing.id === id);
    onChange({ card_id: id, name: found?.fields.card?.name ?? found?.fields.name });
  };
  const missing = product.card_id !== "" && !cards.some(({ id }) => id === product.card_id);
  const wanted = product.card_id === "" || (missing && card === undefined);
  const options = cards.map(({ id, fields }) => ({ value: id, label: fields.card?.name ?? fields.name ?? jobs.noName }));
  if (missing) options.push({ value: product.card_id, label: product.name ?? jobs.noName });
  return (
    <>
      {options.length > 0 && <Pick label={jobs.plan.card} value={product.card_id || undefined} options={options} onValue={choose} error={wanted && missing ? jobs.plan.cardMissing : undefined} />}
      {product.card_id !== "" && !missing && (
        <a class="button quiet" href={address("jobs", "cards", product.card_id, "edit")}>
          {jobs.plan.openCard}
        </a>
      )}
      {wanted && typing && (
        <QuickCard
          onMade={(id, name) => {
            onChange({ card_id: id, name });
            setTyping(false);
          }}
        />
      )}
      {wanted && !typing && (
        <button type="button" class="button wide" onClick={() => setTyping(true)}>
          {jobs.plan.newCard}
        </button>
      )}
    </>
  );
}
type Pick3 = globalThis.Pick<FieldsProps, "product" | "card" | "onChange">;

/** For labels that count a rate in something else than product and finished mix. */
function CountedIn({ product, card, onChange }: Pick3): JSX.Element {
  const { jobs } = useWords();
  const ingredients = card?.ingredients ?? [];
  return (
    <>
      <Choice
        label={jobs.plan.measures}
        value={product.measures ?? "product"}
        options={(["product", "acid", "ingredient"] as const).map((value) => ({ value, label: jobs.plan.measuresOf[value] }))}
        onValue={(measures) => onChange({ measures: measures === "product" ? undefined : measures })}
      />
      {ingredients.length > 1 && (
        <Pick label={jobs.plan.ingredient} value={product.ingredient} options={ingredients.map(({ name }) => ({ value: name, label: name }))} onValue={(ingredient) => onChange({ ingredient })} />
      )}
      <Choice
        label={jobs.plan.shareOf}
        value={product.share_of ?? "finished_mix"}
        options={(["finished_mix", "carrier"] as const).map((value) => ({ value, label: jobs.plan.shares[value] }))}
        onValue={(share_of) => onChange({ share_of: share_of === "finished_mix" ? undefined : share_of })}
      />
    </>
  );
}
