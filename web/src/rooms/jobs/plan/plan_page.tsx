// The plan of a broadcast job: what is typed on top, the loads below, live at each key.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go } from "@/app/route";
import { ask } from "@/core/core";
import { useForm } from "@/notebook/forms";
import { useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { Pick } from "@/parts/fields";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, useWords, type Words } from "@/words/words";
import { cardsOf, keep, liveLine, loadsRequest, planOf, rateText, tankProducts, type PlanForm } from "../job_data";
import { FormNotices } from "../steps";
import { MeasuresForm } from "./measures";
import { PlanAnswer } from "./plan_answer";
import { PlanGround } from "./plan_ground";
import { ProductsForm } from "./products_form";

export function PlanPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const cardOf = cardsOf(cards, job.fields);
  const { value: form, set, clear, resumed } = useForm<PlanForm>(`jobs/plan/${job.id}`, planOf(job.fields));
  const saving = useSaving();
  const products = tankProducts(form.products, cardOf);
  const asked = ask("loads", loadsRequest(form, products));
  const missing = stillMissing(jobs, form, products.length);
  const plan = keep(job.fields.name ?? "", asked);
  const save = async () => {
    if (plan === undefined) return;
    const { banded, band_width, row_spacing, ...fields } = form;
    const { calibration = null, dead_volume, mix_counts } = fields;
    const bands = banded ? { bands: { band_width, row_spacing }, mix_counts } : { bands: null, mix_counts: null };
    const body = { ...fields, ...bands, calibration, dead_volume: dead_volume || null, plan };
    if (!(await saving.save([{ kind: "job", subject: job.id, body }]))) return;
    clear();
    go("jobs", job.id);
  };
  return (
    <main>
      <PageHead title={jobs.plan.title} back={address("jobs", job.id)} />
      <p class="job-name">{job.fields.name}</p>
      <FormNotices resumed={resumed} onClear={clear} />
      <PlanGround job={job} form={form} asked={asked} set={set} />
      <Section title={jobs.plan.products}>
        <p class="hint">{jobs.cards.youType}</p>
        <ProductsForm products={form.products} cardOf={cardOf} asked={asked} banded={form.banded} onProducts={(change) => set((now) => ({ ...now, products: change(now.products) }))} />
      </Section>
      <MeasuresForm measures={form.measures} asked={asked} onMeasures={(measures) => set({ measures })} />
      <Pick
        label={jobs.plan.order}
        hint={jobs.plan.orderHint}
        value={form.order}
        options={Object.entries(jobs.plan.orders).map(([value, label]) => ({ value: value as NonNullable<PlanForm["order"]>, label }))}
        onValue={(order) => set({ order })}
      />
      {form.order === "as_label" && <p class="hint">{jobs.plan.asListed}</p>}
      {form.products.length > 0 && <PlanAnswer asked={asked} missing={missing} />}
      <SaveBar saving={saving} live={liveLine(jobs, asked.answer) ?? missing ?? asked.refusal?.detail} label={jobs.plan.save} disabled={plan === undefined} onSave={() => void save()} />
    </main>
  );
}

/** What must still be typed before there can be loads, by the names on the screen. */
function stillMissing(jobs: Words["jobs"], form: PlanForm, products: number): string | undefined {
  const names = [
    form.net_area === "" && (form.banded ? jobs.plan.fieldArea : jobs.form.netArea),
    form.mix_per_area === "" && jobs.plan.mix,
    form.banded && form.band_width === "" && jobs.plan.bandWidth,
    form.banded && form.row_spacing === "" && jobs.plan.rowSpacing,
    form.tank_usable === "" && jobs.plan.tank,
    products === 0 && jobs.plan.aProduct,
    products > 0 && form.products.some(({ rate }) => rateText(rate) === "") && jobs.plan.rate,
  ].filter((name) => name !== false);
  return names.length === 0 ? undefined : say(jobs.plan.missing, names.join(", "));
}
