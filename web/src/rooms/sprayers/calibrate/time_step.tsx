// The passes by the clock. The running pass survives a reload: its first instant is in the form.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { Stopwatch } from "@/parts/stopwatch";
import { say, useWords } from "@/words/words";
import { isByHand } from "../sorts";
import { secondsOf, timeProblem } from "./calibration_form";
import type { StepProps } from "./calibrate_page";

export function TimeStep(props: StepProps): JSX.Element {
  const { sprayer, form, set, ground } = props;
  const words = useWords().sprayers.calibrate.time;
  if (form.way === "flow_and_speed" && form.speed_from === "meter") return <p>{words.notNeeded}</p>;
  const pass = say(words.pass, form.times.length + 1);
  const add = (time: string) => set((before) => ({ ...before, times: [...before.times, time], running: null }));
  return (
    <>
      <h2>{words.heading}</h2>
      <p>{isByHand(sprayer.sort) ? words.howHand : words.how}</p>
      <Stopwatch running={form.running} start={words.start} stop={words.stop} what={pass} onStart={(running) => set({ running })} onStop={(seconds) => add(`${seconds} s`)} />
      {form.running !== null && (
        <button type="button" class="button wide" onClick={() => set({ running: null })}>
          {words.throwAway}
        </button>
      )}
      <Passes {...props} />
      {ground.answer && form.times.length > 0 && (
        <div class="figures">
          <Figure label={words.mean} of={{ ...ground, working: [] }} value={ground.answer.mean_course_time} />
          <Figure label={words.speed} of={ground} value={ground.answer.speed} />
        </div>
      )}
      <TypedTime {...props} />
    </>
  );
}

function Passes({ form, set, ground }: StepProps): JSX.Element {
  const { sprayers, common } = useWords();
  const words = sprayers.calibrate.time;
  const remove = (index: number) => set((before) => ({ ...before, times: before.times.filter((_, place) => place !== index) }));
  const { field, detail } = ground.refusal ?? {};
  return (
    <>
      <h3>{words.list}</h3>
      {form.times.length === 0 && <p class="empty">{words.noneYet}</p>}
      <ol class="passes">
        {form.times.map((time, index) => (
          <li key={index}>
            <span>
              {say(words.pass, index + 1)}: <strong>{time}</strong>
              {field === `course_times[${index}]` && <span class="error">{detail}</span>}
            </span>
            <button type="button" class="button" aria-label={say(words.removePass, index + 1)} onClick={() => remove(index)}>
              {common.remove}
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}

function TypedTime({ form, set }: StepProps): JSX.Element {
  const words = useWords().sprayers.calibrate.time;
  const [tried, setTried] = useState(false);
  const add = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (secondsOf(form.typed_time) === undefined) return;
    setTried(false);
    set((before) => ({ ...before, times: [...before.times, before.typed_time], typed_time: "" }));
  };
  const problem = tried ? timeProblem(form.typed_time) : undefined;
  return (
    <form class="typed-time" onSubmit={add}>
      <AmountField label={words.typed} value={form.typed_time} units={unitsOf.time} error={problem} onValue={(typed_time) => set({ typed_time })} required={false} />
      <button class="button" disabled={form.typed_time === ""}>
        {words.addTime}
      </button>
    </form>
  );
}
