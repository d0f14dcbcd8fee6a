// The catch: a timer of the same seconds, then what was caught, place by place.
import type { JSX } from "preact";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { CatchTimer } from "@/parts/catch_timer";
import { Choice, TextField } from "@/parts/fields";
import { useSettings } from "@/app/settings";
import { measured, show } from "@/core/quantity";
import { say, useWords } from "@/words/words";
import { AmountsEntry } from "../amounts_entry";
import { isByHand } from "../sorts";
import { byTip, catchesOf, secondsOf, timeProblem, tipCount } from "./calibration_form";
import type { StepProps } from "./calibrate_page";
import { problemAt } from "./steps";

export function CatchStep(props: StepProps): JSX.Element {
  const { sprayer, form, set, asked } = props;
  const words = useWords().sprayers.calibrate.catch;
  const tipwise = byTip(form, sprayer.sort);
  const sources = [
    { value: "catch" as const, label: words.flowCatch },
    { value: "meter" as const, label: words.flowMeter },
  ];
  const metered = form.way === "flow_and_speed" && form.flow_from === "meter";
  return (
    <>
      <h2>{words.heading}</h2>
      {form.way === "flow_and_speed" && <Choice label={words.flowFrom} value={form.flow_from} options={sources} onValue={(flow_from) => set({ flow_from })} />}
      {metered ? (
        <AmountField label={words.flow} value={form.flow} units={unitsOf.flow} error={problemAt(asked.refusal, form, "flow")} onValue={(flow) => set({ flow })} />
      ) : (
        <>
          <p>{isByHand(sprayer.sort) ? words.howHand : tipwise ? words.how : words.howAll}</p>
          {tipwise && tipCount(form.tips) === undefined && <TipCountField {...props} />}
          <Seconds {...props} />
          {(!tipwise || tipCount(form.tips) !== undefined) && <Amounts {...props} />}
        </>
      )}
    </>
  );
}

export function TipCountField({ sprayer, form, set }: StepProps): JSX.Element {
  const { sprayers } = useWords();
  const wrong = form.tips !== "" && tipCount(form.tips) === undefined;
  return (
    <TextField
      label={form.tips === "" ? sprayers.calibrate.catch.tipsFirst : sprayer.sort === "band" ? sprayers.form.tipsBand : sprayers.form.tips}
      whole
      value={form.tips}
      error={wrong ? sprayers.units.wholeNumber : undefined}
      onValue={(tips) => set({ tips })}
    />
  );
}

function Seconds({ form, set, ground }: StepProps): JSX.Element {
  const words = useWords().sprayers.calibrate.catch;
  const mean = measured(ground.answer?.mean_course_time);
  const own = form.way === "flow_and_speed" || form.catch_seconds === "typed";
  const seconds = own ? secondsOf(form.catch_time) : mean?.value;
  const choices = [
    { value: "course" as const, label: mean ? say(words.fromCourse, show(ground.answer?.mean_course_time)) : words.fromCourseNone },
    { value: "typed" as const, label: words.fromTyped },
  ];
  return (
    <>
      {form.way !== "flow_and_speed" && <Choice label={words.from} value={form.catch_seconds} options={choices} onValue={(catch_seconds) => set({ catch_seconds, countdown: null })} />}
      {own && <AmountField label={words.seconds} value={form.catch_time} units={unitsOf.time} error={timeProblem(form.catch_time)} onValue={(catch_time) => set({ catch_time, countdown: null })} />}
      <CatchTimer seconds={seconds} countdown={form.countdown} onCountdown={(countdown) => set({ countdown })} />
    </>
  );
}

function Amounts({ sprayer, form, set, asked }: StepProps): JSX.Element {
  const { units } = useSettings();
  const words = useWords().sprayers.calibrate.catch;
  const tipwise = byTip(form, sprayer.sort);
  const tips = tipCount(form.tips) ?? 1;
  const filled = form.caught.reduce((last, text, index) => (text.trim() === "" ? last : index + 1), 0);
  const count = tipwise ? tips * form.rounds : Math.max(3, filled + 1);
  const label = (index: number): string => {
    if (!tipwise) return say(words.catchNumber, index + 1);
    const tip = (index % tips) + 1;
    return form.rounds > 1 ? say(words.tipRound, tip, Math.floor(index / tips) + 1) : say(words.tip, tip);
  };
  const { places } = catchesOf(form, sprayer.sort);
  const problem = (index: number): string | undefined => {
    const field = asked.refusal?.field ?? "";
    const place = /^catches\[(\d+)\]/.exec(field)?.[1];
    return place !== undefined && places[Number(place)] === index ? asked.refusal?.detail : undefined;
  };
  return (
    <>
      <h3>{words.amounts}</h3>
      <AmountsEntry
        values={form.caught}
        count={count}
        at={form.at}
        unit={form.caught_unit}
        units={unitsOf.caught[units]}
        onUnit={(caught_unit) => set({ caught_unit })}
        label={label}
        nextLabel={tipwise ? words.nextTip : words.nextCatch}
        problem={problem}
        onChange={(caught, at) => set({ caught, at })}
      />
      {tipwise && filled >= tips * form.rounds && (
        <button type="button" class="button wide" onClick={() => set({ rounds: form.rounds + 1, at: tips * form.rounds })}>
          {words.another}
        </button>
      )}
    </>
  );
}
