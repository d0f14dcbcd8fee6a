// The next load: every amount big, ticked off as it goes in; or the load in the tank, to be ended.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import type { Load as PlannedLoad, LoadsAnswer } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { newId, useNotebook } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { TextField } from "@/parts/fields";
import { Caution } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, instant, say, showTime, useWords } from "@/words/words";
import { loadsOf, openLoad, plannedLoads, underWay } from "./day_data";
import { amountText, stepsOf, type MixStep } from "./load_steps";

export function LoadPage({ job }: { job: Thing<"job"> }): JSX.Element {
  useNotebook();
  const { fieldDay } = useWords();
  const inTank = openLoad(job.id);
  const planned = plannedLoads(job.fields);
  const number = (loadsOf(job.id)[0]?.fields.number ?? 0) + 1;
  const next = planned[number - 1] ?? planned.at(-1);
  return (
    <main>
      <PageHead title={inTank ? say(fieldDay.inTank, inTank.fields.number) : titleOf(number, planned.length, fieldDay)} back={address("field-day", job.id)} />
      {inTank && <EndLoad job={job} load={inTank} />}
      {!inTank && next && <MixLoad key={number} job={job} number={number} load={next} extra={number > planned.length} />}
      {!inTank && !next && (
        <div class="empty">
          <p>{fieldDay.noPlan}</p>
          <a class="button main" href={address("jobs", job.id)}>
            {fieldDay.toPlan}
          </a>
        </div>
      )}
    </main>
  );
}

const titleOf = (number: number, of: number, words: { loadNumber: string; loadMore: string }): string =>
  of > 0 && number <= of ? say(words.loadNumber, number, of) : say(words.loadMore, number);

interface MixProps {
  job: Thing<"job">;
  number: number;
  load: PlannedLoad;
  extra: boolean;
}

function MixLoad({ job, number, load, extra }: MixProps): JSX.Element {
  const { fieldDay } = useWords();
  const form = useForm<{ ticked: string[]; differed: string }>(`load/${job.id}/${number}`, { ticked: [], differed: "" });
  const saving = useSaving();
  const steps = stepsOf(load, job.fields.plan?.answer as LoadsAnswer, fieldDay);
  const { ticked, differed } = form.value;
  const open = steps.filter(({ key }) => !ticked.includes(key)).length;
  const tick = (key: string) => form.set((before) => ({ ...before, ticked: before.ticked.includes(key) ? before.ticked.filter((one) => one !== key) : [...before.ticked, key] }));
  const save = async () => {
    const body = {
      job: job.id,
      number,
      mix: show(load.fill),
      carrier: show(load.carrier),
      amounts: (load.products ?? []).map(({ name = "", amount }) => ({ product: name, amount: amountText(amount) })),
      checked: steps.filter(({ key }) => ticked.includes(key)).map(({ what, amount }) => [what, amount].filter(Boolean).join(", ")),
      mixed_at: instant(),
      notes: differed.trim() || undefined,
    };
    if (!(await saving.save([{ kind: "load", subject: newId(), body }, ...underWay(job)]))) return;
    form.clear();
    goInstead("field-day", job.id);
  };
  return (
    <>
      {extra && <p class="refusal">{say(fieldDay.allLoads, plannedLoads(job.fields).length)}</p>}
      <p class="mix-total">
        {fieldDay.mix} <strong>{show(load.fill)}</strong> <span>{say(fieldDay.waterInAll, show(load.carrier))}</span>
      </p>
      <Caution>{fieldDay.loadCaution}</Caution>
      <ol class="mix-steps">
        {steps.map((step) => (
          <StepRow key={step.key} step={step} done={ticked.includes(step.key)} onTick={() => tick(step.key)} />
        ))}
      </ol>
      {open > 0 && <TextField label={fieldDay.differed} hint={fieldDay.differedHint} required={false} long value={differed} onValue={(text) => form.set({ differed: text })} />}
      <SaveBar
        saving={saving}
        onSave={() => void save()}
        disabled={open > 0 && differed.trim() === ""}
        label={open > 0 ? `${fieldDay.mixed}: ${count(open, fieldDay.leftToTick)}` : fieldDay.mixed}
      />
    </>
  );
}

function StepRow({ step, done, onTick }: { step: MixStep; done: boolean; onTick: () => void }): JSX.Element {
  return (
    <li>
      <label class={done ? "tick mix-step chosen" : "tick mix-step"}>
        <input type="checkbox" checked={done} onChange={onTick} />
        <span>
          <span class="mix-what">{step.what}</span>
          {step.amount && <strong class="mix-amount">{step.amount}</strong>}
          {step.note && <small>{step.note}</small>}
        </span>
      </label>
    </li>
  );
}

function EndLoad({ job, load }: { job: Thing<"job">; load: Thing<"load"> }): JSX.Element {
  const { fieldDay } = useWords();
  const form = useForm<{ left: string }>(`load-end/${load.id}`, { left: "" });
  const saving = useSaving();
  const save = async () => {
    const body = { ended_at: instant(), left_over: form.value.left || undefined };
    if (!(await saving.save([{ kind: "load", subject: load.id, body }]))) return;
    form.clear();
    goInstead("field-day", job.id);
  };
  const { mix, mixed_at, amounts } = load.fields;
  return (
    <>
      <p class="mix-total">
        {fieldDay.mix} <strong>{mix}</strong> {mixed_at && <span>{say(fieldDay.mixedAt, showTime(mixed_at))}</span>}
      </p>
      <ul class="part-list">
        {(amounts ?? []).map(({ product, amount }) => (
          <li key={product}>
            {product}: <strong>{amount}</strong>
          </li>
        ))}
      </ul>
      <AmountField label={fieldDay.leftOver} hint={fieldDay.leftOverHint} required={false} value={form.value.left} units={unitsOf.tank} onValue={(left) => form.set({ left })} />
      <SaveBar saving={saving} onSave={() => void save()} label={fieldDay.endLoad} />
    </>
  );
}
