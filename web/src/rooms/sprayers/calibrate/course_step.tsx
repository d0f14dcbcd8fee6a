// The ground: width, and the course to lay out for it (or the area of a plot).
import type { JSX } from "preact";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice } from "@/parts/fields";
import { useWords } from "@/words/words";
import { isByHand } from "../sorts";
import { canHaveArea } from "./calibration_form";
import type { StepProps } from "./calibrate_page";
import { CoursePlan } from "./course_plan";
import { problemAt } from "./steps";

export function CourseStep(props: StepProps): JSX.Element {
  const { form, set, ground } = props;
  const { sprayers } = useWords();
  const words = sprayers.calibrate.course;
  const problem = (field: keyof typeof form) => problemAt(ground.refusal, form, field);
  const byArea = form.ground === "area" && canHaveArea(form.way);
  const heading = form.way === "refill" ? words.headingArea : form.way === "timed_plot" ? words.headingPlot : words.headingCourse;
  const grounds = [
    { value: "length" as const, label: words.gateLength },
    { value: "area" as const, label: words.gateArea },
  ];
  const speeds = [
    { value: "clock" as const, label: words.speedClock },
    { value: "meter" as const, label: words.speedMeter },
  ];
  return (
    <>
      <h2>{heading}</h2>
      {canHaveArea(form.way) && <Choice label={words.gate} value={form.ground} options={grounds} onValue={(chosen) => set({ ground: chosen })} />}
      {byArea ? (
        <AmountField label={words.area} value={form.area} units={unitsOf.area} error={problem("area")} onValue={(area) => set({ area })} />
      ) : (
        <Widths {...props} />
      )}
      {form.way === "flow_and_speed" && <Choice label={words.speedFrom} value={form.speed_from} options={speeds} onValue={(speed_from) => set({ speed_from })} />}
      {form.way === "flow_and_speed" && form.speed_from === "meter" ? (
        <AmountField label={words.speed} value={form.speed} units={unitsOf.speed} error={problem("speed")} onValue={(speed) => set({ speed })} />
      ) : (
        !byArea && <CoursePlan {...props} />
      )}
    </>
  );
}

function Widths({ sprayer: { sort }, form, set, ground }: StepProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.form;
  const problem = (field: keyof typeof form) => problemAt(ground.refusal, form, field);
  if (sort === "band") {
    return (
      <div class="two">
        <AmountField label={words.band} value={form.band_width} units={unitsOf.spacing} error={problem("band_width")} onValue={(band_width) => set({ band_width })} />
        <AmountField label={words.rows} value={form.row_spacing} units={unitsOf.spacing} error={problem("row_spacing")} onValue={(row_spacing) => set({ row_spacing })} required={false} />
      </div>
    );
  }
  const hint = sort === "boomless" ? words.widthHintBoomless : isByHand(sort) ? words.widthHintHand : sort === "boom" ? words.widthHintBoom : undefined;
  return (
    <div class="two">
      <AmountField label={words.width} hint={hint} value={form.width} units={unitsOf.length} error={problem("width")} onValue={(width) => set({ width })} required={sort !== "boom"} />
      {sort === "boom" && (
        <AmountField label={words.spacing} value={form.spacing} units={unitsOf.spacing} error={problem("spacing")} onValue={(spacing) => set({ spacing })} required={false} />
      )}
      {sort === "boomless" && (
        <AmountField label={words.wetted} value={form.wetted_width} units={unitsOf.length} error={problem("wetted_width")} onValue={(wetted_width) => set({ wetted_width })} required={false} />
      )}
    </div>
  );
}
