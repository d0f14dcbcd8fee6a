// The first two groups of a label card: what it is, and how strong.
import type { JSX } from "preact";
import type { Formulation } from "@/core/operations.gen";
import { AmountField } from "@/parts/amount_field";
import { Choice, Pick, TextField } from "@/parts/fields";
import { useWords } from "@/words/words";
import type { CardStep } from "./card_form";
import type { IngredientText } from "./card_data";

export function Identity({ form, set, wrong }: CardStep): JSX.Element {
  const { jobs } = useWords();
  const formulations = Object.entries(jobs.cards.formulations).map(([value, label]) => ({ value: value as Formulation, label }));
  return (
    <>
      <TextField label={jobs.cards.name} hint={jobs.cards.nameHint} value={form.name} onValue={(name) => set({ name })} />
      <TextField label={jobs.cards.registration} hint={jobs.cards.registrationHint} required={false} value={form.registration} error={wrong("registration")} onValue={(registration) => set({ registration })} />
      <TextField label={jobs.cards.labelDate} hint={jobs.cards.labelDateHint} type="date" required={false} value={form.label_date} onValue={(label_date) => set({ label_date })} />
      <Choice label={jobs.cards.form} value={form.form} options={(["liquid", "dry"] as const).map((value) => ({ value, label: jobs.cards.forms[value] }))} onValue={(poured) => set({ form: poured })} />
      <Pick label={jobs.cards.formulation} hint={jobs.cards.formulationHint} required={false} value={form.formulation || undefined} options={formulations} onValue={(formulation) => set({ formulation })} />
    </>
  );
}

const strengthUnits = {
  liquid: {
    active: { us: ["lb a.i./gal", "g a.i./L"], metric: ["g a.i./L", "lb a.i./gal"] },
    acid: { us: ["lb a.e./gal", "g a.e./L"], metric: ["g a.e./L", "lb a.e./gal"] },
  },
  dry: { active: { us: ["% w/w"], metric: ["% w/w"] }, acid: { us: ["% w/w"], metric: ["% w/w"] } },
};
const members = { liquid: { active: "strength", acid: "acid_strength" }, dry: { active: "part", acid: "acid_part" } } as const;

export function Strengths({ form, set, wrong }: CardStep): JSX.Element {
  const { common, jobs } = useWords();
  const list: IngredientText[] = form.ingredients.length === 0 ? [{ name: "", active: "", acid: "" }] : form.ingredients;
  const change = (at: number, part: Partial<IngredientText>) => set({ ingredients: list.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  const units = strengthUnits[form.form];
  return (
    <>
      <p class="hint">{jobs.cards.strengthsHint}</p>
      {list.map((one, index) => (
        <fieldset key={index} class="product">
          <legend>
            {jobs.cards.ingredient} {index + 1}
          </legend>
          <TextField label={jobs.cards.ingredientName} value={one.name} onValue={(name) => change(index, { name })} />
          <div class="two">
            <AmountField label={jobs.cards.acid} required={false} units={units.acid} value={one.acid} error={wrong(`ingredients[${index}].${members[form.form].acid}`)} onValue={(acid) => change(index, { acid })} />
            <AmountField label={jobs.cards.active} required={false} units={units.active} value={one.active} error={wrong(`ingredients[${index}].${members[form.form].active}`)} onValue={(active) => change(index, { active })} />
          </div>
          {list.length > 1 && (
            <button type="button" class="button quiet" onClick={() => set({ ingredients: list.filter((_, other) => other !== index) })}>
              {common.remove} {one.name}
            </button>
          )}
        </fieldset>
      ))}
      <button type="button" class="button wide" onClick={() => set({ ingredients: [...list, { name: "", active: "", acid: "" }] })}>
        {jobs.cards.anotherIngredient}
      </button>
      {form.form === "liquid" && (
        <AmountField label={jobs.cards.density} hint={jobs.cards.densityHint} required={false} units={{ us: ["lb/gal", "kg/L"], metric: ["kg/L", "lb/gal"] }} value={form.density} error={wrong("density")} onValue={(density) => set({ density })} />
      )}
    </>
  );
}
