// The course for this width: drawn, with its length, the time it takes and the short rule that belongs to it.
import type { JSX } from "preact";
import { ask, type Asked } from "@/core/core";
import type { CourseRow, Quantity, SprayerKind } from "@/core/operations.gen";
import { measured, show, showNumber, showUnit } from "@/core/quantity";
import { settings } from "@/app/settings";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { say, useWords } from "@/words/words";
import { byTip, type CalibrationForm } from "./calibration_form";
import type { StepProps } from "./calibrate_page";
import { CourseFigure } from "./course_figure";
import { problemAt } from "./steps";

export function CoursePlan({ sprayer, form, set, ground }: StepProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.calibrate.course;
  const width = widthFor(form, sprayer.sort, ground);
  const oneTip = isOneTip(form, sprayer.sort);
  const courses = width === undefined ? undefined : ask("course", { width, speed: form.guess_speed, laid_length: form.course_length });
  // A wrong length or guess must not take the plan away.
  const plan = courses?.answer ? courses : width === undefined ? undefined : ask("course", { width });
  const row = chosenRow(plan, form.course_length);
  const guessProblem = courses?.refusal?.field === "speed" && form.guess_speed !== "" ? courses.refusal.detail : undefined;
  const lengthProblem = problemAt(ground.refusal, form, "course_length") ?? (courses?.refusal?.field === "laid_length" ? courses.refusal.detail : undefined);
  return (
    <>
      <AmountField label={words.guess} hint={words.guessHint} value={form.guess_speed} units={unitsOf.speed} error={guessProblem} onValue={(guess_speed) => set({ guess_speed })} required={false} />
      {oneTip && <p class="hint">{words.oneTip}</p>}
      {plan?.answer && row ? <Plan plan={plan} row={row} length={form.course_length} use={(course_length) => set({ course_length })} /> : <p class="empty">{words.widthFirst}</p>}
      <AmountField label={words.length} hint={words.lengthHint} value={form.course_length} units={unitsOf.length} error={lengthProblem} onValue={(course_length) => set({ course_length })} />
      {plan?.answer && <Others plan={plan} use={(course_length) => set({ course_length })} />}
    </>
  );
}

/** Caught tip by tip on a boom, the course belongs to the ground of one tip. */
const isOneTip = (form: CalibrationForm, sort: SprayerKind | undefined): boolean => sort === "boom" && byTip(form, sort) && form.spacing !== "";

/** The width the course is for: of one tip, of one band, as entered, or as the core makes it of tips and spacing. */
function widthFor(form: CalibrationForm, sort: SprayerKind | undefined, ground: Asked<"calibrate">): Quantity | undefined {
  if (sort === "band") return form.band_width || undefined;
  if (isOneTip(form, sort)) return form.spacing;
  return form.width || ground.answer?.width || probeWidth(ground);
}

function probeWidth({ request }: Asked<"calibrate">): Quantity | undefined {
  const stand = { course_length: "100 ft", course_times: ["30 s"], flow: "1 gal/min", method: "flow_and_speed" as const, catch_covers: "all_tips" as const };
  return ask("calibrate", { sprayer: request.sprayer, spacing: request.spacing, tips: request.tips, wetted_width: request.wetted_width, ...stand }).answer?.width;
}

const inUnits = (row: CourseRow): boolean => (settings.now().units === "us") === (row.part ?? "").endsWith("ac");

/** The row of a length already laid out, else the shortest course that can be timed. */
function chosenRow(plan: Asked<"course"> | undefined, length: string): CourseRow | undefined {
  const { rows = [], laid } = plan?.answer ?? {};
  if (length !== "" && laid !== undefined) return laid;
  const own = rows.filter(inUnits);
  return own.find(({ recommended }) => recommended) ?? own.find(isLong) ?? own[0];
}

/** Long enough to time at any usual speed, while no speed was said: 70 ft or 20 m and more. */
function isLong({ practical_length: length }: CourseRow): boolean {
  const amount = measured(length);
  return amount !== undefined && amount.value >= (amount.unit === "m" ? 20 : 70);
}

interface PlanProps {
  plan: Asked<"course">;
  row: CourseRow;
  length: string;
  use: (length: string) => void;
}

const typed = (length: Quantity | undefined): string => {
  const amount = measured(length);
  return amount === undefined ? "" : `${showNumber(amount.value, 6)} ${amount.unit}`;
};

function Plan({ plan, row, length, use }: PlanProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.calibrate.course;
  const short = plan.answer?.rows?.find(inUnits);
  const stakeOut = row.practical_length ?? row.length;
  const laid = length !== "" && plan.answer?.laid !== undefined;
  const ruleText = row.rule ? `${words.rule}: ${row.rule}` : words.noRule;
  return (
    <div class="course-plan">
      <CourseFigure width={plan.request.width} length={laid ? (row.length ?? stakeOut) : stakeOut} short={short === row ? undefined : short} />
      <div class="figures">
        <Figure size="main" label={laid ? words.length : `${words.stake} (${showUnit(row.part ?? "")})`} of={plan} value={laid ? row.length : stakeOut} note={ruleText} />
        <Figure label={words.takes} of={plan} value={row.time} />
        <Figure label={words.clockError} of={plan} value={row.timing_error} />
      </div>
      <Findings of={plan.findings.filter(({ code }) => code !== "clean_water" && code !== "speed_not_entered")} />
      {!laid && stakeOut && (
        <button type="button" class="button wide" onClick={() => use(typed(stakeOut))}>
          {say(words.use, show(stakeOut))}
        </button>
      )}
      {short && short !== row && !short.recommended && !isLong(short) && <WhyNotShort plan={plan} short={short} />}
    </div>
  );
}

function WhyNotShort({ plan, short }: { plan: Asked<"course">; short: CourseRow }): JSX.Element {
  const words = useWords().sprayers.calibrate.course;
  const width = show(plan.request.width);
  const text = short.time
    ? say(words.shortWhy, width, show(short.practical_length), show(short.time), show(short.timing_error))
    : say(words.shortWhyNoTime, width, show(short.practical_length));
  return (
    <details class="fold">
      <summary>{say(words.shortTitle, showUnit(short.part ?? ""))}</summary>
      <p>{text}</p>
    </details>
  );
}

function Others({ plan, use }: { plan: Asked<"course">; use: (length: string) => void }): JSX.Element {
  const words = useWords().sprayers.calibrate.course;
  const rows = (plan.answer?.rows ?? []).filter(inUnits);
  return (
    <details class="fold">
      <summary>{words.others}</summary>
      <ul class="courses">
        {rows.map((row) => (
          <li key={row.part}>
            <span>
              <strong>{row.part}</strong>: {show(row.practical_length)}
              <small>
                {row.rule}
                {row.time && ` · ${words.takes.toLowerCase()}: ${show(row.time)}`}
                {row.timing_error && ` · ${words.clockError.toLowerCase()}: ${show(row.timing_error)}`}
              </small>
            </span>
            <button type="button" class="button" onClick={() => use(typed(row.practical_length))}>
              {say(words.use, show(row.practical_length))}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
