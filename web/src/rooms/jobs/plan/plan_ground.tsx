// Ground and sprayer of a plan: how much is wetted, what the sprayer puts on it, what one fill gives.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { useThing, useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice } from "@/parts/fields";
import { Section } from "@/parts/list";
import { say, showDate, useWords } from "@/words/words";
import { areaOfStand, asTyped, calibrationsOf, errorAt, type PlanForm } from "../job_data";

interface Props {
  job: Thing<"job">;
  form: PlanForm;
  set: (change: Partial<PlanForm>) => void;
  asked: Asked<"loads">;
}

export function PlanGround(props: Props): JSX.Element {
  const { form, set, asked, job } = props;
  const { jobs } = useWords();
  const stand = useThing("stand", job.fields.stand);
  const area = form.banded ? "planned_area" : "net_area";
  return (
    <Section title={jobs.plan.ground}>
      <Choice label={jobs.plan.cover} value={form.banded ? "bands" : "all"} options={(["all", "bands"] as const).map((value) => ({ value, label: jobs.plan.coverings[value] }))} onValue={(cover) => set({ banded: cover === "bands" })} />
      <div class="two">
        <AmountField
          label={form.banded ? jobs.plan.fieldArea : jobs.form.netArea}
          hint={form.banded ? jobs.plan.fieldAreaHint : jobs.form.netAreaHint}
          units={unitsOf.area}
          value={form.net_area}
          error={errorAt(asked, area, form.net_area)}
          onValue={(net_area) => set({ net_area })}
        />
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
      <LastCalibration {...props} />
      {form.banded && <BandFields {...props} />}
      <div class="two">
        <AmountField label={jobs.plan.tank} hint={jobs.plan.tankHint} units={unitsOf.tank} value={form.tank_usable} error={errorAt(asked, "tank_usable", form.tank_usable)} onValue={(tank_usable) => set({ tank_usable })} />
        <AmountField label={jobs.plan.dead} hint={jobs.plan.deadHint} required={false} units={unitsOf.tank} value={form.dead_volume} error={errorAt(asked, "dead_volume", form.dead_volume)} onValue={(dead_volume) => set({ dead_volume })} />
      </div>
      <Choice label={jobs.plan.split} value={form.split} options={(["equal", "full_then_rest"] as const).map((value) => ({ value, label: jobs.plan.splits[value] }))} onValue={(split) => set({ split })} />
    </Section>
  );
}

function BandFields({ form, set, asked }: Props): JSX.Element {
  const { jobs } = useWords();
  return (
    <>
      <div class="two">
        <AmountField label={jobs.plan.bandWidth} units={unitsOf.spacing} value={form.band_width} error={errorAt(asked, "bands.band_width", form.band_width)} onValue={(band_width) => set({ band_width })} />
        <AmountField label={jobs.plan.rowSpacing} units={unitsOf.spacing} value={form.row_spacing} error={errorAt(asked, "bands.row_spacing", form.row_spacing)} onValue={(row_spacing) => set({ row_spacing })} />
      </div>
      <Choice label={jobs.plan.mixCounts} value={form.mix_counts} options={(["treated", "field"] as const).map((value) => ({ value, label: jobs.plan.countsOf[value] }))} onValue={(mix_counts) => set({ mix_counts })} />
    </>
  );
}

/** What the sprayer put out when it was last calibrated, with its interval; a press takes it. */
function LastCalibration({ job, form, set }: Props): JSX.Element | null {
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
