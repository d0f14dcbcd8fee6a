// The label in hand, typed once, in short groups. Saving again makes a new entry of the same card; what was
// there before stays in its history.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { ask } from "@/core/core";
import type { Form, Formulation, ProductCard } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { newId, useThing } from "@/notebook/notebook";
import type { Card } from "@/notebook/things";
import { RefusalNote } from "@/parts/findings";
import { Caution } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { useWords } from "@/words/words";
import { FormNotices, StepBar } from "../steps";
import { allLimits, groups, ingredientOf, ingredientText, limitsOf, limitText, type IngredientText, type LimitName, type LimitText } from "./card_data";
import { Identity, Strengths } from "./card_identity";
import { LimitGroup, OtherLimits } from "./limit_fields";

export interface CardForm {
  step: number;
  name: string;
  registration: string;
  form: Form;
  formulation: Formulation | "";
  density: string;
  label_date: string;
  ingredients: IngredientText[];
  limits: Partial<Record<LimitName, LimitText>>;
  other: LimitText[];
}
export interface CardStep {
  form: CardForm;
  set: (change: Partial<CardForm>) => void;
  /** The core's sentence for a field of the card. */
  wrong: (field: string) => string | undefined;
}
const steps = ["identity", "strengths", "rates", "caps", "weather", "waits", "wear"] as const;

export function CardForm({ id }: { id?: string }): JSX.Element {
  const { common, jobs } = useWords();
  const card = useThing("product_card", id);
  const { value: form, set, clear, resumed } = useForm<CardForm>(`jobs/card/${id ?? "new"}`, fromCard(card?.fields));
  const saving = useSaving();
  const made = cardOf(form);
  const asked = ask("spot", { products: [{ card: made, rate: "1 % v/v" }] });
  const wrong = (field: string) => (asked.refusal?.field === `products[0].card.${field}` ? asked.refusal.detail : undefined);
  const step = steps[form.step] ?? "identity";
  const isLast = form.step === steps.length - 1;
  const save = async () => {
    const subject = id ?? newId();
    const body = { name: made.name, card: made, label_date: form.label_date || null };
    if (!(await saving.save([{ kind: "product_card", subject, body }]))) return;
    clear();
    goInstead("jobs", "cards", subject);
  };
  const part = { form, set, wrong };
  return (
    <main>
      <PageHead title={id === undefined ? jobs.cards.new : jobs.cards.edit} back={id === undefined ? address("jobs", "cards") : address("jobs", "cards", id)} />
      <FormNotices resumed={resumed} onClear={clear} />
      <Caution>
        <p>{jobs.cards.youType}</p>
      </Caution>
      <StepBar steps={steps.map((name) => jobs.cards.steps[name])} at={form.step} onStep={(next) => set({ step: next })} />
      {step === "identity" && <Identity {...part} />}
      {step === "strengths" && <Strengths {...part} />}
      {step !== "identity" && step !== "strengths" && <LimitGroup fields={groups[step]} {...part} />}
      {step === "wear" && <OtherLimits {...part} />}
      {form.name.trim() !== "" && <RefusalNote of={asked.refusal} />}
      <SaveBar saving={saving} live={isLast && form.name.trim() === "" ? jobs.cards.nameFirst : undefined} label={isLast ? jobs.cards.save : common.next} disabled={isLast && (form.name.trim() === "" || asked.refusal !== undefined)} onSave={() => (isLast ? void save() : set({ step: form.step + 1 }))}>
        {!isLast && form.name.trim() !== "" && asked.refusal === undefined ? (
          <button type="button" class="button" disabled={saving.busy} onClick={() => void save()}>
            {jobs.cards.saveNow}
          </button>
        ) : null}
      </SaveBar>
    </main>
  );
}

function cardOf(form: CardForm): ProductCard {
  const { name, registration, form: poured, formulation, density, ingredients, limits, other } = form;
  return {
    name: name.trim(),
    ...(registration.trim() === "" ? {} : { registration: registration.trim() }),
    form: poured,
    ...(formulation === "" ? {} : { formulation }),
    ...(density === "" ? {} : { density }),
    ingredients: ingredients.filter((one) => one.name.trim() !== "").map((one) => ingredientOf(poured, one)),
    limits: limitsOf(limits, other),
  };
}

function fromCard(kept: Card | undefined): CardForm {
  const card = kept?.card;
  const limits = allLimits.flatMap((field) => {
    const found = limitText(card?.limits, field);
    return found === undefined ? [] : [[field.name, found] as const];
  });
  return {
    step: 0,
    name: card?.name ?? kept?.name ?? "",
    registration: card?.registration ?? "",
    form: card?.form ?? "liquid",
    formulation: card?.formulation ?? "",
    density: show(card?.density),
    label_date: kept?.label_date ?? "",
    ingredients: (card?.ingredients ?? []).map(ingredientText),
    limits: Object.fromEntries(limits) as CardForm["limits"],
    other: (card?.limits?.other ?? []).map(({ text, where }) => ({ value: text, where })),
  };
}
