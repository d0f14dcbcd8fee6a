// A new job in three short steps: what, where, with what. Nothing but a name is needed to begin; what is
// not in the notebook yet is typed right here.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useForm } from "@/notebook/forms";
import { newId, useThing, useThings } from "@/notebook/notebook";
import type { JobState, WorkKind } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice, Pick, TextField, Tick } from "@/parts/fields";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { ask, withoutBlanks } from "@/core/core";
import { say, showDate, useWords } from "@/words/words";
import { areaOfStand, asTyped, calibrationsOf, errorAt } from "./job_data";
import { FormNotices, StepBar } from "./steps";

interface JobForm {
  step: number;
  name: string;
  work: WorkKind;
  state: JobState;
  target: string;
  planned_for: string;
  stand: string;
  net_area: string;
  sprayer: string;
  calibration: string;
  mix_per_area: string;
  tank_usable: string;
  dead_volume: string;
  operators: string[];
  notes: string;
}
const empty: JobForm = {
  step: 0,
  name: "",
  work: "broadcast",
  state: "planned",
  target: "",
  planned_for: "",
  stand: "",
  net_area: "",
  sprayer: "",
  calibration: "",
  mix_per_area: "",
  tank_usable: "",
  dead_volume: "",
  operators: [],
  notes: "",
};
interface StepProps {
  form: JobForm;
  set: (change: Partial<JobForm>) => void;
}

export function JobForm({ id }: { id?: string }): JSX.Element {
  const { common, jobs } = useWords();
  const job = useThing("job", id);
  const [newest] = useThings("job");
  const { value: form, set, clear, resumed } = useForm<JobForm>(id === undefined ? "jobs/new" : `jobs/edit/${id}`, { ...empty, ...pickKnown(job?.fields) });
  const saving = useSaving();
  const last = form.step >= 2;
  const save = async () => {
    const subject = id ?? newId();
    const { step: _step, ...body } = form;
    const measures = id === undefined ? newest?.fields.measures : undefined;
    if (!(await saving.save([{ kind: "job", subject, body: { ...(id === undefined ? withoutBlanks(body) : nullBlanks(body)), ...(measures ? { measures } : {}) } }]))) return;
    clear();
    goInstead("jobs", subject);
  };
  const back = id === undefined ? address("jobs") : address("jobs", id);
  return (
    <main>
      <PageHead title={id === undefined ? jobs.newJob : jobs.changeJob} back={back} />
      <FormNotices resumed={resumed} onClear={clear} />
      <StepBar steps={[jobs.form.what, jobs.form.where, jobs.form.with]} at={form.step} onStep={(step) => set({ step })} />
      {form.step === 0 && <WhatStep form={form} set={set} />}
      {form.step === 1 && <WhereStep form={form} set={set} />}
      {form.step >= 2 && <WithStep form={form} set={set} />}
      <SaveBar saving={saving} live={form.name.trim() === "" ? jobs.form.nameFirst : undefined} label={last ? jobs.form.save : common.next} disabled={form.name.trim() === ""} onSave={() => (last ? void save() : set({ step: form.step + 1 }))} />
    </main>
  );
}

// A field that was emptied is cleared in the notebook too, except where there never was one.
function nullBlanks<T extends object>(body: T): T {
  return Object.fromEntries(Object.entries(body).map(([name, value]) => [name, value === "" ? null : (value as unknown)])) as T;
}

function pickKnown(fields: object | undefined): Partial<JobForm> {
  if (fields === undefined) return {};
  const known = Object.entries(fields).filter(([name, value]) => name in empty && value !== null && typeof value === typeof empty[name as keyof JobForm]);
  return Object.fromEntries(known) as Partial<JobForm>;
}

function WhatStep({ form, set }: StepProps): JSX.Element {
  const { jobs } = useWords();
  const works = (["broadcast", "spot", "stems"] as const).map((value) => ({ value, label: jobs.works[value], hint: jobs.workHints[value] }));
  return (
    <>
      <TextField label={jobs.form.name} hint={jobs.form.nameHint} value={form.name} onValue={(name) => set({ name })} />
      <Choice label={jobs.form.work} value={form.work} options={works} onValue={(work) => set({ work })} />
      <TextField label={jobs.form.target} hint={jobs.form.targetHint} required={false} value={form.target} onValue={(target) => set({ target })} />
      <TextField label={jobs.form.day} type="date" required={false} value={form.planned_for} onValue={(planned_for) => set({ planned_for })} />
    </>
  );
}

function WhereStep({ form, set }: StepProps): JSX.Element {
  const { jobs } = useWords();
  const stands = useThings("stand");
  const choose = (stand: string) => set({ stand, net_area: areaOfStand(stands.find(({ id }) => id === stand)) || form.net_area });
  const read = form.net_area === "" ? undefined : ask("loads", { net_area: form.net_area, products: [] });
  return (
    <>
      {stands.length > 0 && (
        <Pick
          label={jobs.form.stand}
          required={false}
          value={form.stand || undefined}
          options={stands.map((stand) => ({ value: stand.id, label: [stand.fields.name || jobs.noName, areaOfStand(stand)].filter(Boolean).join(", ") }))}
          onValue={choose}
        />
      )}
      <AmountField
        label={jobs.form.netArea}
        hint={stands.length === 0 ? jobs.form.netAreaTyped : jobs.form.netAreaHint}
        units={unitsOf.area}
        value={form.net_area}
        error={errorAt(read, "net_area", form.net_area)}
        onValue={(net_area) => set({ net_area })}
      />
    </>
  );
}

function WithStep({ form, set }: StepProps): JSX.Element {
  const { jobs } = useWords();
  const sprayers = useThings("sprayer").filter(({ fields }) => fields.retired !== true);
  const operators = useThings("operator");
  const calibrations = calibrationsOf(useThings("calibration"), ({ fields }) => fields.sprayer === form.sprayer);
  const newest = calibrations[0];
  const choose = (sprayer: string) => {
    const found = sprayers.find(({ id }) => id === sprayer);
    set({ sprayer, tank_usable: found?.fields.tank ?? form.tank_usable, dead_volume: found?.fields.trapped ?? form.dead_volume });
  };
  const toggle = (id: string, on: boolean) => set({ operators: on ? [...form.operators, id] : form.operators.filter((other) => other !== id) });
  const isStems = form.work === "stems";
  return (
    <>
      {!isStems && sprayers.length > 0 && (
        <Pick
          label={jobs.form.sprayer}
          required={false}
          value={form.sprayer || undefined}
          options={sprayers.map(({ id, fields }) => ({ value: id, label: fields.name || jobs.noName }))}
          onValue={choose}
        />
      )}
      {!isStems && newest !== undefined && (
        <button type="button" class="button wide" onClick={() => set({ calibration: newest.id, mix_per_area: asTyped(newest.fields.answer.output) })}>
          {say(jobs.form.takeCalibration, asTyped(newest.fields.answer.output), showDate(newest.fields.on ?? newest.created))}
        </button>
      )}
      {!isStems && <AmountField label={jobs.plan.mix} hint={jobs.form.mixHint} required={false} units={unitsOf.mixPerArea} value={form.mix_per_area} onValue={(mix_per_area) => set({ mix_per_area, calibration: "" })} />}
      {!isStems && <AmountField label={jobs.plan.tank} hint={jobs.plan.tankHint} required={false} units={unitsOf.tank} value={form.tank_usable} onValue={(tank_usable) => set({ tank_usable })} />}
      {operators.length > 0 && (
        <fieldset class="field">
          <legend>{jobs.form.who}</legend>
          <div>
            {operators.map(({ id, fields }) => (
              <Tick key={id} label={fields.name || jobs.noName} checked={form.operators.includes(id)} onValue={(on) => toggle(id, on)} />
            ))}
          </div>
        </fieldset>
      )}
      <TextField label={jobs.form.notes} long required={false} value={form.notes} onValue={(notes) => set({ notes })} />
    </>
  );
}
