// What if the sprayer put out more, or went slower? The saved plan on the left, the other on the right; big
// steps up and down, or the figure typed.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go } from "@/app/route";
import { ask, type RequestOf } from "@/core/core";
import type { LimitCheck, LoadsAnswer, Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { useThing } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, splitAmount, unitsOf } from "@/parts/amount_field";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { StepperField } from "@/parts/stepper_field";
import { say, useWords } from "@/words/words";
import { asTyped, errorAt, keep, liveLine, planOf, type Measure } from "../job_data";
import { limitName } from "./limits";

interface Form {
  mix_per_area: string;
  speed: string;
  speed_before: string;
  tank_usable: string;
}

export function WhatIf({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const plan = job.fields.plan;
  if (plan?.operation !== "loads") {
    return (
      <main>
        <PageHead title={jobs.whatIf.title} back={address("jobs", job.id)} />
        <div class="empty">{jobs.mixing.noPlan}</div>
      </main>
    );
  }
  return <Compare job={job} request={plan.request as RequestOf<"loads">} saved={plan.answer as LoadsAnswer} />;
}

function Compare({ job, request, saved }: { job: Thing<"job">; request: RequestOf<"loads">; saved: LoadsAnswer }): JSX.Element {
  const { jobs } = useWords();
  const calibration = useThing("calibration", job.fields.calibration);
  const measuredSpeed = asTyped(calibration?.fields.answer?.speed);
  const mix = typed(request.mix_per_area) || (job.fields.mix_per_area ?? "");
  const { value: form, set, clear } = useForm<Form>(`jobs/what-if/${job.id}`, { mix_per_area: mix, speed: measuredSpeed, speed_before: measuredSpeed, tank_usable: typed(request.tank_usable) });
  const saving = useSaving();
  const slower = form.speed !== "" && form.speed_before !== "" ? ask("adjust", { target: mix, rate: mix, speed: form.speed_before, speeds: [form.speed] }) : undefined;
  const other = ask("loads", { ...request, mix_per_area: form.mix_per_area, tank_usable: form.tank_usable });
  const putSpeed = (speed: string) => {
    const rate = ask("adjust", { target: mix, rate: mix, speed: form.speed_before, speeds: [speed] }).answer?.at_speeds?.[0]?.rate;
    set(rate === undefined ? { speed } : { speed, mix_per_area: asTyped(rate) });
  };
  const plan = keep(job.fields.name ?? "", other);
  const save = async () => {
    if (plan === undefined) return;
    const { products: _products, ...kept } = planOf(job.fields);
    const body = { ...kept, mix_per_area: form.mix_per_area, tank_usable: form.tank_usable, calibration: form.mix_per_area === mix ? (job.fields.calibration ?? null) : null, order: kept.order, plan };
    if (!(await saving.save([{ kind: "job", subject: job.id, body }]))) return;
    clear();
    go("jobs", job.id);
  };
  return (
    <main>
      <PageHead title={jobs.whatIf.title} back={address("jobs", job.id)} />
      <p class="hint">{jobs.whatIf.hint}</p>
      <StepperField label={jobs.plan.mix} units={unitsOf.mixPerArea} value={form.mix_per_area} step={stepOf(form.mix_per_area)} error={errorAt(other, "mix_per_area", form.mix_per_area)} onValue={(mix_per_area) => set({ mix_per_area })} />
      {measuredSpeed === "" && <AmountField label={jobs.whatIf.speedBefore} hint={jobs.whatIf.speedBeforeHint} required={false} units={unitsOf.speed} value={form.speed_before} error={errorAt(slower, "speed", form.speed_before)} onValue={(speed_before) => set({ speed_before })} />}
      <StepperField label={jobs.whatIf.speed} hint={jobs.whatIf.speedHint} required={false} units={unitsOf.speed} value={form.speed} step={0.5} error={errorAt(slower, "speeds[0]", form.speed)} onValue={putSpeed} />
      <StepperField label={jobs.plan.tank} units={unitsOf.tank} value={form.tank_usable} step={5} error={errorAt(other, "tank_usable", form.tank_usable)} onValue={(tank_usable) => set({ tank_usable })} />
      <Section title={jobs.whatIf.beside}>
        <RefusalNote of={other.refusal} />
        {other.answer && <Beside saved={saved} other={other.answer} />}
        <Findings of={other.findings.filter(({ severity }) => severity === "stop" || severity === "warning")} />
        {slower && <Findings of={slower.findings.filter(({ code }) => code === "calibrate_again")} />}
      </Section>
      <SaveBar saving={saving} live={liveLine(jobs, other.answer)} label={jobs.whatIf.take} disabled={plan === undefined} onSave={() => void save()} />
    </main>
  );
}

const typed = (quantity: Quantity | undefined): string => (typeof quantity === "string" ? quantity : asTyped(quantity));
const stepOf = (text: string): number => (splitAmount(text).unit.includes("L/ha") ? 10 : 1);

const isBroken = ({ status }: LimitCheck) => status === "above" || status === "below";

function Beside({ saved, other }: { saved: LoadsAnswer; other: LoadsAnswer }): JSX.Element {
  const { common, jobs } = useWords();
  const totalOf = (answer: LoadsAnswer, name: string | undefined) => (answer.products?.find((product) => product.name === name)?.total as Measure | undefined)?.text ?? "";
  const broken = (answer: LoadsAnswer) =>
    (answer.products ?? []).flatMap((product) => (product.limits ?? []).filter(isBroken).map((check) => `${product.name ?? ""}: ${limitName(jobs.limits, check.limit)}`)).join("; ") || common.none;
  const rows: Array<[string, string, string]> = [
    [jobs.plan.totalMix, show(saved.total_mix), show(other.total_mix)],
    [jobs.plan.loadCount, String(saved.load_count ?? ""), String(other.load_count ?? "")],
    [jobs.plan.firstFill, show(saved.loads?.[0]?.fill), show(other.loads?.[0]?.fill)],
    ...(other.products ?? []).map((product): [string, string, string] => [say(jobs.whatIf.inAll, product.name ?? ""), totalOf(saved, product.name), totalOf(other, product.name)]),
    [jobs.whatIf.broken, broken(saved), broken(other)],
  ];
  return (
    <table class="table beside">
      <thead>
        <tr>
          <td />
          <th scope="col">{jobs.whatIf.savedPlan}</th>
          <th scope="col">{jobs.whatIf.other}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, before, after]) => (
          <tr key={name} class={before === after ? undefined : "changed"}>
            <th scope="row">{name}</th>
            <td>{before}</td>
            <td>
              {after}
              {before !== after && <small>{jobs.whatIf.changed}</small>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
