// How good the answer is, against how good it should be, and what would make it better.
import type { JSX } from "preact";
import { address } from "@/app/route";
import { measured, showNumber } from "@/core/quantity";
import { Choice } from "@/parts/fields";
import { count, say, useWords } from "@/words/words";
import type { StepProps } from "./calibrate_page";

export function Repeats({ id, form, set, asked }: StepProps): JSX.Element | null {
  const words = useWords().sprayers.calibrate.result;
  const spread = measured(asked.answer?.plus_minus);
  const { repeats } = asked.answer ?? {};
  if (spread === undefined || repeats === undefined) return null;
  const shown = `${showNumber(spread.value, 2)} %`;
  const reached = spread.value <= Number(form.target);
  const { more_course_times: passes = 0, more_catches: catches = 0 } = repeats;
  const targets = (["5", "10", "15"] as const).map((value) => ({ value, label: say(words.targetOption, value) }));
  return (
    <section class="repeats">
      <h3>{say(words.interval, shown)}</h3>
      <Choice label={words.target} value={form.target} options={targets} onValue={(target) => set({ target })} />
      <p class={reached ? "reached" : "not-reached"} role="status">
        {say(reached ? words.reached : words.notReached, shown, form.target)}
      </p>
      <p>{repeats.text}</p>
      {!reached && (
        <div class="row">
          {passes > 0 && (
            <a class="button" href={address("sprayers", id, "calibrate", "time")}>
              {count(passes, words.morePasses)}
            </a>
          )}
          {catches > 0 && (
            <a class="button" href={address("sprayers", id, "calibrate", "catch")}>
              {count(catches, words.moreCatches)}
            </a>
          )}
        </div>
      )}
    </section>
  );
}
