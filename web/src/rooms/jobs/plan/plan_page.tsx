// The plan of a broadcast job: what is typed on top, the loads below, live at each key.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go } from "@/app/route";
import { ask } from "@/core/core";
import { useForm } from "@/notebook/forms";
import { useThing, useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice, Pick } from "@/parts/fields";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, showDate, useWords } from "@/words/words";
import { areaOfStand, asTyped, calibrationsOf, cardsOf, errorAt, keep, liveLine, loadsRequest, planOf, tankProducts, type PlanForm } from "../job_data";
import { FormNotices } from "../steps";
import { MeasuresForm } from "./measures";
import { PlanAnswer } from "./plan_answer";
import { ProductsForm } from "./products_form";

export function PlanPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const cardOf = cardsOf(cards, job.fields);
  const stand = useThing("stand", job.fields.stand);
  const { value: form, set, clear, resumed } = useForm<PlanForm>(`jobs/plan/${job.id}`, planOf(job.fields));
  const saving = useSaving();
  const products = tankProducts(form.products, cardOf);
  const asked = ask("loads", loadsRequest(form, products));
  const plan = keep(job.fields.name ?? "", asked);
  const save = async () => {
    if (plan === undefined) return;
    const { net_area, mix_per_area, calibration, tank_usable, dead_volume, split, order, measures } = form;
    const body = { net_area, mix_per_area, calibration: calibration ?? null, tank_usable, dead_volume: dead_volume || null, split, order, measures, products: form.products, plan };
    if (!(await saving.save([{ kind: "job", subject: job.id, body }]))) return;
    clear();
    go("jobs", job.id);
  };
  return (
    <main>
      <PageHead title={jobs.plan.title} back={address("jobs", job.id)} />
      <p class="job-name">{job.fields.name}</p>
      <FormNotices resumed={resumed} onClear={clear} />
      <Section title={jobs.plan.ground}>
        <div class="two">
          <AmountField label={jobs.form.netArea} hint={jobs.form.netAreaHint} units={unitsOf.area} value={form.net_area} error={errorAt(asked, "net_area", form.net_area)} onValue={(net_area) => set({ net_area })} />
          <AmountField
            label={jobs.plan.mix}
            hint={jobs.plan.mixHint}
            units={unitsOf.mixPerArea}
            value={form.mix_per_area}
            error={errorAt(asked, "mix_per_area", form.mix_per_area)}
            onValue={(mix_per_area) => set({ mix_per_area, calibration: undefined })}
          />
        </div>
        {form.net_area === "" && areaOfStand(stand) !== "" && (
          <button type="button" class="button wide" onClick={() => set({ net_area: areaOfStand(stand) })}>
            {say(jobs.plan.takeArea, areaOfStand(stand))}
          </button>
        )}
        <LastCalibration job={job} form={form} set={set} />
        <div class="two">
          <AmountField label={jobs.plan.tank} hint={jobs.plan.tankHint} units={unitsOf.tank} value={form.tank_usable} error={errorAt(asked, "tank_usable", form.tank_usable)} onValue={(tank_usable) => set({ tank_usable })} />
          <AmountField label={jobs.plan.dead} hint={jobs.plan.deadHint} required={false} units={unitsOf.tank} value={form.dead_volume} error={errorAt(asked, "dead_volume", form.dead_volume)} onValue={(dead_volume) => set({ dead_volume })} />
        </div>
        <Choice label={jobs.plan.split} value={form.split} options={(["equal", "full_then_rest"] as const).map((value) => ({ value, label: jobs.plan.splits[value] }))} onValue={(split) => set({ split })} />
      </Section>
      <Section title={jobs.plan.products}>
        <p class="hint">{jobs.cards.youType}</p>
        <ProductsForm products={form.products} cardOf={cardOf} asked={asked} onProducts={(list) => set({ products: list })} />
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
      {form.products.length > 0 && <PlanAnswer asked={asked} />}
      <SaveBar saving={saving} live={liveLine(jobs, asked.answer)} label={jobs.plan.save} disabled={plan === undefined} onSave={() => void save()} />
    </main>
  );
}

interface CalibrationProps {
  job: Thing<"job">;
  form: PlanForm;
  set: (change: Partial<PlanForm>) => void;
}

/** What the sprayer put out when it was last calibrated, with its interval; a press takes it. */
function LastCalibration({ job, form, set }: CalibrationProps): JSX.Element | null {
  const { common, jobs } = useWords();
  const [newest] = calibrationsOf(useThings("calibration"), ({ fields }) => fields.sprayer !== undefined && fields.sprayer === job.fields.sprayer);
  const output = newest?.fields.answer.output;
  if (newest === undefined || output === undefined) return null;
  const range = typeof output === "object" && output.low !== undefined && output.high !== undefined ? say(common.interval, asTyped({ value: output.low, unit: output.unit }), asTyped({ value: output.high, unit: output.unit })) : "";
  const words = say(jobs.plan.calibrated, showDate(newest.fields.on ?? newest.created), asTyped(output), range);
  if (form.calibration === newest.id && form.mix_per_area === asTyped(output)) return <p class="hint">{words}</p>;
  return (
    <button type="button" class="button wide" onClick={() => set({ mix_per_area: asTyped(output), calibration: newest.id })}>
      {say(jobs.plan.takeMix, asTyped(output))}
      <small>{words}</small>
    </button>
  );
}
