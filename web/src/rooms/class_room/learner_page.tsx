// One learner's own figures, typed by the learner: the phone goes from hand to hand.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go, goInstead } from "@/app/route";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { TextField } from "@/parts/fields";
import { RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { askLearner, emptyLearner, nameOf, useClass, type LearnerForm } from "./class_form";
import { HandVerdict } from "./hand_verdict";

export function LearnerPage({ group, number }: { group: string; number: number }): JSX.Element {
  const { classRoom, common } = useWords();
  const form = useClass(group);
  const { value } = form;
  const learner = value.learners[number] ?? emptyLearner;
  const change = (part: Partial<LearnerForm>) => form.set((before) => ({ ...before, learners: before.learners.map((each, index) => (index === number ? { ...each, ...part } : each)) }));
  const asked = askLearner(value, number);
  const result = asked?.answer?.learners?.[0];
  const isLast = number + 1 >= value.learners.length;
  const next = () => {
    if (isLast) form.set((before) => ({ ...before, learners: [...before.learners, emptyLearner] }));
    go("class", "group", group, "learner", String(number + 1));
  };
  const remove = () => {
    form.set((before) => ({ ...before, learners: before.learners.filter((_, index) => index !== number) }));
    goInstead("class", "group", group);
  };
  if (value.learners[number] === undefined) {
    return (
      <main>
        <PageHead title={classRoom.title} back={address("class", "group", group)} />
        <p class="refusal">{common.notFound}</p>
      </main>
    );
  }
  const errorAt = (name: string) => (asked?.refusal?.field?.replace(/^learners\[0\]\./, "").startsWith(name) ? asked.refusal.detail : undefined);
  const shownAtField = ["width", "course_length", "times", "catches", "hand_answer"].some((name) => errorAt(name) !== undefined);
  return (
    <main>
      <PageHead title={say(classRoom.learner, nameOf(learner, number))} back={address("class", "group", group)} />
      <TextField label={classRoom.learnerName} hint={classRoom.learnerNameHint} required={false} value={learner.name} onValue={(name) => change({ name })} />
      <div class="two">
        <AmountField label={classRoom.width} hint={value.width && say(classRoom.asClass, value.width)} required={value.width === ""} units={unitsOf.length} value={learner.width} error={errorAt("width")} onValue={(width) => change({ width })} />
        <AmountField label={classRoom.course} hint={value.course_length && say(classRoom.asClass, value.course_length)} required={value.course_length === ""} units={unitsOf.length} value={learner.course_length} error={errorAt("course_length")} onValue={(course_length) => change({ course_length })} />
      </div>
      <Several label={classRoom.time} more={classRoom.anotherTime} units="time" values={learner.times} error={errorAt("times")} onValues={(times) => change({ times })} />
      <Several label={classRoom.caught} more={classRoom.anotherCatch} units="caught" values={learner.catches} error={errorAt("catches")} onValues={(catches) => change({ catches })} />
      <AmountField label={classRoom.handAnswer} hint={classRoom.handAnswerHint} required={false} units={unitsOf.mixPerArea} value={learner.hand_answer} error={errorAt("hand_answer")} onValue={(hand_answer) => change({ hand_answer })} />
      {!shownAtField && <RefusalNote of={asked?.refusal} />}
      {result && (
        <Section title={classRoom.yourResult}>
          <div class="figures">
            <Figure size="main" label={classRoom.output} of={asked} value={result.output} />
            <Figure label={classRoom.speed} of={asked} value={result.speed} />
            <Figure label={classRoom.flow} of={asked} value={result.flow} />
          </div>
          {result.hand && <HandVerdict name={nameOf(learner, number)} hand={result.hand} />}
        </Section>
      )}
      <div class="row">
        <a class="button main" href={address("class", "group", group)}>
          {common.done}
        </a>
        <button type="button" class="button" onClick={next}>
          {isLast ? classRoom.addLearner : classRoom.nextLearner}
        </button>
        <button type="button" class="button quiet" onClick={remove}>
          {classRoom.removeLearner}
        </button>
      </div>
    </main>
  );
}

interface SeveralProps {
  label: string;
  more: string;
  units: "time" | "caught";
  values: string[];
  error: string | undefined;
  onValues: (values: string[]) => void;
}

/** The same reading several times. */
function Several({ label, more, units, values, error, onValues }: SeveralProps): JSX.Element {
  return (
    <>
      <div class="two">
        {values.map((value, index) => (
          <AmountField
            key={index}
            label={values.length === 1 ? label : `${label} ${index + 1}`}
            required={index === 0}
            units={unitsOf[units]}
            value={value}
            error={index === 0 ? error : undefined}
            onValue={(text) => onValues(values.map((each, at) => (at === index ? text : each)))}
          />
        ))}
      </div>
      {values.at(-1) !== "" && (
        <button type="button" class="button quiet" onClick={() => onValues([...values, ""])}>
          {more}
        </button>
      )}
    </>
  );
}
