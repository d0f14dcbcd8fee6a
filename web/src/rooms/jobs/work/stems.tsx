// Stem by stem: cuts counted with the thumb against the strictest ceiling, which is never rounded up.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useSettings } from "@/app/settings";
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { newId, useThings, type Draft } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { TextField } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { instant, say, useWords } from "@/words/words";
import { cardsOf, errorAt, keep, whole } from "../job_data";
import { FormNotices } from "../steps";
import { StemProducts, stemProducts, type StemRow } from "./stem_products";
import { Tally } from "./tally";

interface StemsForm {
  products: StemRow[];
  dose: string;
  area: string;
  area_done: string;
  stems: string;
  cuts_per_stem: string;
  cuts: number;
  begun_at: string;
}

function formOf({ fields }: Thing<"job">): StemsForm {
  const request = (fields.plan?.operation === "stems" ? fields.plan.request : {}) as Partial<RequestOf<"stems">>;
  const text = (quantity: Quantity | undefined) => (typeof quantity === "string" ? quantity : show(quantity));
  const kept = request.products ?? [];
  const rows = (Array.isArray(fields.products) ? fields.products : []).map(({ card_id, name }, index): StemRow => {
    const { card: _card, ...rest } = kept[index] ?? { card: undefined };
    return { ...rest, card_id, name };
  });
  return {
    products: rows.length > 0 ? rows : [{ card_id: "" }],
    dose: text(request.dose),
    area: text(request.area) || (fields.net_area ?? ""),
    area_done: "",
    stems: request.stems === undefined ? "" : String(request.stems),
    cuts_per_stem: request.cuts_per_stem === undefined ? "" : String(request.cuts_per_stem),
    cuts: 0,
    begun_at: "",
  };
}

export function StemsPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const cardOf = cardsOf(cards, job.fields);
  const earlier = useThings("pass")
    .filter(({ fields }) => fields.job === job.id)
    .reduce((sum, { fields }) => sum + (fields.cuts ?? 0), 0);
  const { value: form, set, clear, resumed } = useForm<StemsForm>(`jobs/stems/${job.id}`, formOf(job));
  const saving = useSaving();
  const request: RequestOf<"stems"> = {
    products: stemProducts(form.products, cardOf),
    dose: form.dose,
    area: form.area,
    area_done: form.area_done,
    stems: whole(form.stems),
    cuts_per_stem: whole(form.cuts_per_stem),
    cuts_made: earlier + form.cuts,
  };
  const asked = ask("stems", request);
  const plan = keep(job.fields.name ?? "", asked);
  const save = async () => {
    if (plan === undefined) return;
    const products = form.products.map(({ card_id, name }) => ({ card_id, name, rate: form.dose }));
    const drafts: Draft[] = [{ kind: "job", subject: job.id, body: { products, net_area: form.area, plan } }];
    if (form.cuts > 0) drafts.push({ kind: "pass", subject: newId(), body: { job: job.id, begun_at: form.begun_at || instant(), ended_at: instant(), cuts: form.cuts } });
    if (await saving.save(drafts)) clear();
  };
  return (
    <main>
      <PageHead title={jobs.stems.title} back={address("jobs", job.id)} />
      <p class="job-name">{job.fields.name}</p>
      <FormNotices resumed={resumed} onClear={clear} />
      <Counter form={form} earlier={earlier} asked={asked} onCuts={(cuts) => set((now) => ({ ...now, cuts, begun_at: now.begun_at || instant() }))} />
      <Section title={jobs.stems.bottle}>
        <p class="hint">{jobs.cards.youType}</p>
        <AmountField label={jobs.stems.dose} hint={jobs.stems.doseHint} units={unitsOf.dose} value={form.dose} error={errorAt(asked, "dose", form.dose)} onValue={(dose) => set({ dose })} />
        <StemProducts rows={form.products} cardOf={cardOf} asked={asked} onRows={(change) => set((now) => ({ ...now, products: change(now.products) }))} />
      </Section>
      <Section title={jobs.plan.ground}>
        <div class="two">
          <AmountField label={jobs.stems.area} units={unitsOf.area} value={form.area} error={errorAt(asked, "area", form.area)} onValue={(area) => set({ area })} />
          <AmountField label={jobs.stems.areaDone} hint={jobs.stems.areaDoneHint} required={false} units={unitsOf.area} value={form.area_done} error={errorAt(asked, "area_done", form.area_done)} onValue={(area_done) => set({ area_done })} />
          <TextField label={jobs.stems.stems} hint={jobs.stems.stemsHint} required={false} whole value={form.stems} onValue={(stems) => set({ stems })} />
          <TextField label={jobs.stems.perStem} required={false} whole value={form.cuts_per_stem} onValue={(cuts_per_stem) => set({ cuts_per_stem })} />
        </div>
      </Section>
      <StemsAnswerView asked={asked} />
      <SaveBar saving={saving} label={form.cuts > 0 ? jobs.stems.saveCount : jobs.plan.save} disabled={plan === undefined} onSave={() => void save()} />
    </main>
  );
}

interface CounterProps {
  form: StemsForm;
  earlier: number;
  asked: Asked<"stems">;
  onCuts: (cuts: number) => void;
}

function Counter({ form, earlier, asked, onCuts }: CounterProps): JSX.Element {
  const { jobs } = useWords();
  const answer = asked.answer;
  const stops = asked.findings.filter(({ severity }) => severity === "stop");
  return (
    <section class="counter">
      <Findings of={stops} />
      <div class="figures">
        <Figure label={jobs.stems.onArea} of={asked} value={answer?.cuts_on_area} />
        <Figure label={jobs.stems.left} of={asked} value={answer?.cuts_remaining} />
        <Figure label={jobs.spot.capUsed} of={asked} value={answer?.share_used} />
        <Figure label={jobs.stems.leftHere} of={asked} value={answer?.cuts_remaining_here} />
      </div>
      {answer !== undefined && answer.cuts_on_area === undefined && <p class="not-entered">{jobs.stems.noCeiling}</p>}
      <Tally count={form.cuts} label={jobs.stems.cutsCounted} press={jobs.stems.oneMore} onCount={onCuts} />
      {earlier > 0 && <p class="hint">{say(jobs.stems.earlier, earlier)}</p>}
    </section>
  );
}

function StemsAnswerView({ asked }: { asked: Asked<"stems"> }): JSX.Element {
  const { jobs } = useWords();
  const { units } = useSettings();
  const answer = asked.answer;
  return (
    <section class="plan-answer">
      <h2 class="answer-title">{jobs.stems.answer}</h2>
      <RefusalNote of={asked.refusal} />
      <Findings of={asked.findings.filter(({ severity }) => severity !== "stop")} />
      {answer && (
        <>
          <div class="figures">
            {units === "metric" ? <Figure label={jobs.stems.perHectare} of={asked} value={answer.cuts_per_hectare} size="main" /> : <Figure label={jobs.stems.perAcre} of={asked} value={answer.cuts_per_acre} size="main" />}
            {(answer.doses ?? []).map((dose, index) => (
              <Figure key={index} label={say(jobs.stems.acidPerCut, dose.product ?? "")} of={asked} value={dose.acid ?? dose.ingredient ?? dose.volume} />
            ))}
            <Figure label={jobs.stems.liquid} of={asked} value={answer.liquid} />
            <Figure label={jobs.stems.density} of={asked} value={answer.density} />
          </div>
          <WorkingButton of={asked} title={jobs.stems.title} />
          {(answer.ceilings?.length ?? 0) > 0 && <h3>{jobs.stems.ceilings}</h3>}
          <ul class="checks">
            {(answer.ceilings ?? []).map((ceiling, index) => (
              <li key={index} class={ceiling.governs ? "check governs" : "check"}>
                <span class="check-ok" aria-hidden="true" />
                <div>
                  <strong>
                    {ceiling.product}: {ceiling.allowed} {ceiling.governs && <em>{jobs.stems.governs}</em>}
                  </strong>
                  <p>
                    {units === "metric" ? say(jobs.stems.wholePerHectare, ceiling.per_hectare ?? "") : say(jobs.stems.wholePerAcre, ceiling.per_acre ?? "")} {ceiling.where}
                  </p>
                </div>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
