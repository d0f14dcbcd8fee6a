import type { JSX } from "preact";
import { ask, type RequestOf } from "@/core/core";
import { useForm } from "@/notebook/forms";
import { useThings } from "@/notebook/notebook";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { Pick, TextField } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { useWords } from "@/words/words";
import { QuickCard } from "../cards/quick_card";
import { errorAt, rateText, whole } from "../job_data";
import { LimitChecks } from "../plan/limits";
import { FormNotices } from "../steps";
import type { ToolProps } from "./tool_pages";

/** The store had another concentrate: its rate for the same dose, held against its own label. */
export function Substitute({ job }: ToolProps): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.substitute;
  const cards = useThings("product_card");
  const product = job?.fields.products?.[0];
  const first = { planned: product?.card_id ?? "", rate: rateText(product?.rate), in_hand: "", mix_per_area: job?.fields.mix_per_area ?? "", applied: "", times: "", adding: false };
  const { value: form, set, clear, resumed } = useForm(`jobs/substitute/${job?.id ?? "alone"}`, first);
  const cardOf = (id: string) => cards.find((thing) => thing.id === id)?.fields.card;
  const planned = cardOf(form.planned);
  const inHand = cardOf(form.in_hand);
  const request = { planned, in_hand: inHand, rate: form.rate, mix_per_area: form.mix_per_area, applied_this_year: form.applied, applications_this_year: whole(form.times) } as RequestOf<"substitute">;
  const asked = planned && inHand && form.rate !== "" ? ask("substitute", request) : undefined;
  const options = cards.map(({ id, fields }) => ({ value: id, label: fields.card?.name ?? fields.name ?? jobs.noName }));
  const answer = asked?.answer;
  return (
    <>
      <FormNotices resumed={resumed} onClear={clear} />
      {options.length > 0 && <Pick label={words.planned} value={form.planned || undefined} options={options} onValue={(id) => set({ planned: id })} />}
      <AmountField label={words.rate} units={unitsOf.rate} value={form.rate} error={errorAt(asked, "rate", form.rate)} onValue={(rate) => set({ rate })} />
      {options.length > 0 && <Pick label={words.inHand} value={form.in_hand || undefined} options={options} onValue={(id) => set({ in_hand: id })} />}
      {form.adding || options.length < 2 ? (
        <QuickCard onMade={(id) => set((now) => ({ ...now, adding: false, ...(now.planned === "" ? { planned: id } : { in_hand: id }) }))} />
      ) : (
        <button type="button" class="button wide" onClick={() => set({ adding: true })}>
          {jobs.plan.newCard}
        </button>
      )}
      <div class="two">
        <AmountField label={jobs.plan.mix} required={false} units={unitsOf.mixPerArea} value={form.mix_per_area} error={errorAt(asked, "mix_per_area", form.mix_per_area)} onValue={(mix_per_area) => set({ mix_per_area })} />
        <AmountField label={words.applied} hint={jobs.plan.appliedHint} required={false} units={unitsOf.rate} value={form.applied} error={errorAt(asked, "applied_this_year", form.applied)} onValue={(applied) => set({ applied })} />
        <TextField label={jobs.plan.times} hint={jobs.plan.timesHint} required={false} whole value={form.times} onValue={(times) => set({ times })} />
      </div>
      <RefusalNote of={asked?.refusal} />
      {asked && answer && (
        <section class="plan-answer">
          <Findings of={asked.findings} />
          <div class="figures">
            <Figure label={words.newRate} of={asked} value={answer.text} size="main" note={inHand?.name} />
            <Figure label={words.dose} of={asked} value={answer.acid_per_area ?? answer.ingredient_per_area} />
            <Figure label={words.ratio} of={asked} value={answer.amount_ratio} />
          </div>
          <WorkingButton of={asked} title={jobs.tools.names.substitute} />
          <LimitChecks products={[{ name: inHand?.name, limits: answer.limits, not_entered: answer.not_entered }]} />
        </section>
      )}
    </>
  );
}
