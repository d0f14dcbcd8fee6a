// Practice: choose a sheet, then answer it here, or print it for a class.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useSettings } from "@/app/settings";
import type { Asked } from "@/core/core";
import type { PracticeCheck, PracticeProblem, PracticeTopic } from "@/core/operations.gen";
import { Choice, TextField, Tick } from "@/parts/fields";
import { Findings, RefusalNote, Sign } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { RightSign } from "./hand_verdict";
import { KeySteps } from "./key_steps";
import { anySeed, askSheet, topics, usePractice, type PracticeForm } from "./practice_form";

export function PracticePage(): JSX.Element {
  const { classRoom, common } = useWords();
  const form = usePractice();
  const { value } = form;
  const asked = askSheet(value);
  return (
    <main>
      <PageHead title={classRoom.practice} back={address("class")} />
      {form.resumed && <p class="hint">{common.resumed}</p>}
      <ChoosePart form={value} onChange={(change) => form.set({ ...change, checked: false })} />
      <RefusalNote of={asked.refusal} />
      {asked.answer && <SheetLine form={value} />}
      <Choice
        label={classRoom.mode}
        value={value.mode}
        options={[
          { value: "learner", label: classRoom.modes.learner, hint: classRoom.modeHints.learner },
          { value: "teacher", label: classRoom.modes.teacher, hint: classRoom.modeHints.teacher },
        ]}
        onValue={(mode) => form.set({ mode })}
      />
      {asked.answer && (value.mode === "learner" ? <LearnerMode form={value} asked={asked} onChange={form.set} /> : <TeacherMode />)}
      <Findings of={asked.findings} />
    </main>
  );
}

/** What another teacher must choose to get the same sheet. */
export function SheetLine({ form }: { form: PracticeForm }): JSX.Element {
  const { classRoom, common } = useWords();
  const { units } = useSettings();
  const chosen = form.topics.length === 0 ? classRoom.allTopics : topics.filter((topic) => form.topics.includes(topic)).map((topic) => classRoom.topics[topic]).join(", ");
  return (
    <p class="sheet-line">
      <strong>{say(classRoom.sheetNumber, form.seed)}</strong> {say(classRoom.sheetIs, form.count, chosen, classRoom.difficulties[form.difficulty], units === "us" ? common.unitsUs : common.unitsMetric)}
    </p>
  );
}

function ChoosePart({ form, onChange }: { form: PracticeForm; onChange: (change: Partial<PracticeForm>) => void }): JSX.Element {
  const { classRoom } = useWords();
  const toggle = (topic: PracticeTopic, on: boolean) => onChange({ topics: on ? [...form.topics, topic] : form.topics.filter((each) => each !== topic), given: {} });
  return (
    <Section title={classRoom.chooseSheet}>
      <div class="two">
        <div>
          <TextField label={classRoom.seed} hint={classRoom.seedHint} whole value={form.seed} onValue={(seed) => onChange({ seed, given: {} })} />
          <button type="button" class="button wide" onClick={() => onChange({ seed: anySeed(), given: {} })}>
            {classRoom.newSeed}
          </button>
        </div>
        <TextField label={classRoom.count} hint={classRoom.countHint} whole value={form.count} onValue={(count) => onChange({ count })} />
      </div>
      <Choice label={classRoom.difficulty} value={form.difficulty} options={(["plain", "field"] as const).map((each) => ({ value: each, label: classRoom.difficulties[each], hint: classRoom.difficultyHints[each] }))} onValue={(difficulty) => onChange({ difficulty, given: {} })} />
      <fieldset class="field">
        <legend>{classRoom.topicsTitle}</legend>
        <p class="hint">{classRoom.topicsHint}</p>
        <div class="topics">
          {topics.map((topic) => (
            <Tick key={topic} label={classRoom.topics[topic]} checked={form.topics.includes(topic)} onValue={(on) => toggle(topic, on)} />
          ))}
        </div>
      </fieldset>
    </Section>
  );
}

function TeacherMode(): JSX.Element {
  const { classRoom } = useWords();
  return (
    <Section title={classRoom.forTeacher}>
      <p>{classRoom.forTeacherIntro}</p>
      <div class="row">
        <a class="button main" href={address("class", "practice", "sheet")}>
          {classRoom.printSheet}
        </a>
        <a class="button" href={address("class", "practice", "key")}>
          {classRoom.printKey}
        </a>
      </div>
    </Section>
  );
}

interface LearnerProps {
  form: PracticeForm;
  asked: Asked<"practice">;
  onChange: (change: Partial<PracticeForm>) => void;
}

function LearnerMode({ form, asked, onChange }: LearnerProps): JSX.Element {
  const { classRoom } = useWords();
  const checks = asked.answer?.checks ?? [];
  const problems = asked.answer?.problems ?? [];
  return (
    <>
      <Section title={classRoom.problems}>
        <ol class="problems">
          {problems.map((problem) => {
            const number = problem.number ?? 0;
            return (
              <Problem
                key={number}
                problem={problem}
                given={form.given[number] ?? ""}
                check={form.checked ? checks.find((check) => check.number === number) : undefined}
                isOpen={form.open.includes(number)}
                onGiven={(text) => onChange({ given: { ...form.given, [number]: text }, checked: false })}
                onOpen={(isOpen) => onChange({ open: isOpen ? [...form.open, number] : form.open.filter((each) => each !== number) })}
              />
            );
          })}
        </ol>
      </Section>
      <div class="save-bar">
        {form.checked && (
          <p class="score" role="status">
            {say(classRoom.score, asked.answer?.right ?? 0, checks.length)}
          </p>
        )}
        <div class="save-row">
          <button type="button" class="button main" onClick={() => onChange({ checked: true })}>
            {classRoom.checkAnswers}
          </button>
        </div>
      </div>
    </>
  );
}

interface ProblemProps {
  problem: PracticeProblem;
  given: string;
  check: PracticeCheck | undefined;
  isOpen: boolean;
  onGiven: (text: string) => void;
  onOpen: (isOpen: boolean) => void;
}

function Problem({ problem, given, check, isOpen, onGiven, onOpen }: ProblemProps): JSX.Element {
  const { classRoom } = useWords();
  return (
    <li class="problem">
      <h3>{say(classRoom.problem, problem.number ?? 0)}</h3>
      <p class="problem-text">{problem.text}</p>
      <TextField label={problem.asks ?? ""} hint={say(classRoom.answerIn, problem.answer?.unit ?? "")} required={false} value={given} onValue={onGiven} />
      {check && <Verdict check={check} />}
      <button type="button" class="button quiet" aria-expanded={isOpen} onClick={() => onOpen(!isOpen)}>
        {say(isOpen ? classRoom.hideKey : classRoom.showKey, problem.number ?? 0)}
      </button>
      {isOpen && <KeySteps problem={problem} />}
    </li>
  );
}

function Verdict({ check }: { check: PracticeCheck }): JSX.Element {
  const { classRoom } = useWords();
  const verdict = check.verdict ?? "not_read";
  return (
    <div class={`verdict ${verdict}`} role="status">
      {verdict === "right" ? <RightSign /> : <Sign severity={verdict === "rounding" ? "note" : verdict === "wrong" ? "warning" : "advice"} />}
      <p>
        <strong>{classRoom.verdicts[verdict]}</strong> {check.text}
      </p>
    </div>
  );
}
