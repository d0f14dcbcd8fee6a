// A label card begun in the middle of a plan: name, form and strength; its limits stay "not entered" until
// they are typed from the label.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Form, Formulation } from "@/core/operations.gen";
import { newId } from "@/notebook/notebook";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice, Pick, TextField } from "@/parts/fields";
import { useSaving } from "@/parts/save_bar";
import { useWords } from "@/words/words";
import { ingredientOf } from "./card_data";

export function QuickCard({ onMade }: { onMade: (id: string, name: string) => void }): JSX.Element {
  const { jobs } = useWords();
  const [typed, setTyped] = useState({ name: "", form: "liquid" as Form, formulation: "" as Formulation | "", ingredient: "", strength: "" });
  const saving = useSaving();
  const set = (part: Partial<typeof typed>) => setTyped((before) => ({ ...before, ...part }));
  const save = async () => {
    const name = typed.name.trim();
    const ingredients = typed.ingredient.trim() === "" ? [] : [ingredientOf(typed.form, { name: typed.ingredient.trim(), ...strengths(typed.strength) })];
    const id = newId();
    if (await saving.save([{ kind: "product_card", subject: id, body: { name, card: { name, form: typed.form, ...(typed.formulation === "" ? {} : { formulation: typed.formulation }), ingredients } } }])) onMade(id, name);
  };
  return (
    <div class="inset">
      <p class="hint">{jobs.cards.quickHint}</p>
      <TextField label={jobs.cards.name} value={typed.name} onValue={(name) => set({ name })} />
      <Choice label={jobs.cards.form} value={typed.form} options={(["liquid", "dry"] as const).map((value) => ({ value, label: jobs.cards.forms[value] }))} onValue={(form) => set({ form })} />
      <Pick
        label={jobs.cards.formulation}
        hint={jobs.cards.formulationHint}
        required={false}
        value={typed.formulation || undefined}
        options={Object.entries(jobs.cards.formulations).map(([value, label]) => ({ value: value as Formulation, label }))}
        onValue={(formulation) => set({ formulation })}
      />
      {typed.form === "liquid" && (
        <>
          <TextField label={jobs.cards.ingredient} required={false} value={typed.ingredient} onValue={(ingredient) => set({ ingredient })} />
          {typed.ingredient.trim() !== "" && <AmountField label={jobs.cards.strength} required={false} units={unitsOf.strength} value={typed.strength} onValue={(strength) => set({ strength })} />}
        </>
      )}
      {saving.trouble}
      <button type="button" class="button wide" disabled={typed.name.trim() === "" || saving.busy} onClick={() => void save()}>
        {jobs.cards.quickSave}
      </button>
    </div>
  );
}

// The unit says what the figure counts: "4 lb a.e./gal" is acid, "4 lb a.i./gal" is active ingredient.
const strengths = (strength: string) => (strength.includes("a.e.") ? { active: "", acid: strength } : { active: strength, acid: "" });
