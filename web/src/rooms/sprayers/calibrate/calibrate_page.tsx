// The guided calibration: one step a screen, each at an address of its own, all of it one form that outlives
// a reload. Every key press asks the core again.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go } from "@/app/route";
import { useSettings } from "@/app/settings";
import { ask, type Asked } from "@/core/core";
import { useForm } from "@/notebook/forms";
import type { Sprayer, Thing } from "@/notebook/things";
import { ClearForm } from "@/parts/clear_form";
import { say, useWords } from "@/words/words";
import { BeginStep } from "./begin_step";
import { askGround, firstForm, requestOf, type CalibrationForm, type SetForm } from "./calibration_form";
import { CatchStep } from "./catch_step";
import { CourseStep } from "./course_step";
import { RefillStep } from "./refill_step";
import { ResultStep } from "./result_step";
import { stepsOf, type StepName } from "./steps";
import { TimeStep } from "./time_step";

export interface StepProps {
  id: string;
  sprayer: Sprayer;
  form: CalibrationForm;
  set: SetForm;
  /** The whole question as it stands. */
  asked: Asked<"calibrate">;
  /** Ground and clock alone. */
  ground: Asked<"calibrate">;
  clear: () => void;
}

const parts: Record<StepName, (props: StepProps) => JSX.Element> = {
  begin: BeginStep,
  course: CourseStep,
  time: TimeStep,
  catch: CatchStep,
  refill: RefillStep,
  result: ResultStep,
};

export function CalibratePage({ sprayer, step }: { sprayer: Thing<"sprayer">; step: string | undefined }): JSX.Element {
  const { sprayers, common } = useWords();
  const { units } = useSettings();
  const { id, fields } = sprayer;
  const { value: form, set, clear, resumed } = useForm(`calibrate/${id}`, firstForm(fields, units));
  const steps = stepsOf(form);
  const current = steps.find((name) => name === step) ?? "begin";
  const asked = ask("calibrate", requestOf(form, fields.sort));
  const ground = askGround(form, fields.sort);
  const Part = parts[current];
  const next = steps[steps.indexOf(current) + 1];
  const before = steps[steps.indexOf(current) - 1];
  const startAgain = () => {
    clear();
    go("sprayers", id, "calibrate");
  };
  return (
    <main class="calibrate">
      <PageHead title={say(sprayers.calibrate.title, fields.name ?? "")} back={before ? address("sprayers", id, "calibrate", before) : address("sprayers", id)} />
      <StepRail id={id} steps={steps} current={current} />
      {resumed && current === "begin" && <p class="resumed">{common.resumed}</p>}
      <Part id={id} sprayer={fields} form={form} set={set} asked={asked} ground={ground} clear={clear} />
      {next && (
        <div class="save-bar">
          <div class="save-row">
            <a class="button main" href={address("sprayers", id, "calibrate", next)}>
              {common.next}: {sprayers.calibrate.steps[next]}
            </a>
          </div>
        </div>
      )}
      <ClearForm label={sprayers.calibrate.emptyForm} question={sprayers.calibrate.emptySure} onClear={startAgain} />
    </main>
  );
}

function StepRail({ id, steps, current }: { id: string; steps: StepName[]; current: StepName }): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.calibrate;
  return (
    <nav class="rail" aria-label={say(words.stepOf, steps.indexOf(current) + 1, steps.length)}>
      <ol>
        {steps.map((name, index) => (
          <li key={name}>
            <a href={address("sprayers", id, "calibrate", name)} aria-current={name === current ? "step" : undefined}>
              <span class="rail-number">{index + 1}</span>
              <span>{words.steps[name]}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
