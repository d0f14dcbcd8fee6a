// One class: what all have in common, each learner, and the class side by side.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, go, goInstead } from "@/app/route";
import type { SprayerKind } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { keepBlob, newId, WriteError } from "@/notebook/notebook";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { ClearForm } from "@/parts/clear_form";
import { Choice, TextField } from "@/parts/fields";
import { RefusalNote } from "@/parts/findings";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { instant, say, useWords } from "@/words/words";
import { askClass, askLearner, emptyLearner, hasFigures, nameOf, useClass, type ClassForm } from "./class_form";
import { bytesOf, classType } from "./kept_class";
import { ResultsPart } from "./results_part";

const sorts: SprayerKind[] = ["backpack", "handgun", "boom", "boomless", "band"];

export function ClassPage({ id }: { id: string }): JSX.Element {
  const { classRoom, common } = useWords();
  const form = useClass(id);
  const saving = useSaving();
  const [trouble, setTrouble] = useState("");
  const { value } = form;
  const asked = askClass(value);
  const add = () => {
    form.set({ learners: [...value.learners, emptyLearner] });
    go("class", "group", id, "learner", String(value.learners.length));
  };
  const clear = () => {
    form.clear();
    goInstead("class");
  };
  const save = async () => {
    if (asked?.answer === undefined) return;
    setTrouble("");
    try {
      const digest = await keepBlob(bytesOf(value, asked), classType);
      const subject = newId();
      const body = { name: value.name.trim() || classRoom.unnamed, blob: digest, type: classType, of: subject, of_kind: "attachment" as const, taken: instant() };
      if (!(await saving.save([{ kind: "attachment", subject, body }]))) return;
      form.clear();
      goInstead("class", "kept", subject);
    } catch (error) {
      setTrouble(error instanceof WriteError && error.reason === "full" ? common.full : say(common.writeFailed, error instanceof Error ? error.message : String(error)));
    }
  };
  return (
    <main>
      <PageHead title={value.name || classRoom.unnamed} back={address("class")} />
      <CommonPart form={value} onChange={form.set} />
      <Section title={classRoom.learners}>
        <ThingList empty={classRoom.noLearners}>
          {value.learners.map((_, index) => (
            <LearnerRow key={index} id={id} form={value} index={index} />
          ))}
        </ThingList>
        <button type="button" class="button main wide" onClick={add}>
          {classRoom.addLearner}
        </button>
      </Section>
      {asked && (
        <Section title={classRoom.sideBySide}>
          <RefusalNote of={asked.refusal} />
          <ResultsPart asked={asked} />
        </Section>
      )}
      {trouble && <p class="refusal">{trouble}</p>}
      {value.learners.length > 0 && <ClearForm onClear={clear} />}
      {asked?.answer && <SaveBar saving={saving} label={classRoom.saveClass} onSave={() => void save()} />}
    </main>
  );
}

function CommonPart({ form, onChange }: { form: ClassForm; onChange: (change: Partial<ClassForm>) => void }): JSX.Element {
  const { classRoom } = useWords();
  const several = ["boom", "boomless", "band"].includes(form.sprayer);
  return (
    <Section title={classRoom.common}>
      <TextField label={classRoom.className} required={false} value={form.name} onValue={(name) => onChange({ name })} />
      <Choice label={classRoom.sprayer} value={form.sprayer} options={sorts.map((sort) => ({ value: sort, label: classRoom.sorts[sort] }))} onValue={(sprayer) => onChange({ sprayer })} />
      <div class="two">
        <AmountField label={classRoom.width} hint={classRoom.widthHint} required={false} units={unitsOf.length} value={form.width} onValue={(width) => onChange({ width })} />
        <AmountField label={classRoom.course} hint={classRoom.courseHint} required={false} units={unitsOf.length} value={form.course_length} onValue={(course_length) => onChange({ course_length })} />
      </div>
      {several && (
        <div class="two">
          <Choice label={classRoom.catchCovers} value={form.catch_covers} options={(["all_tips", "one_tip"] as const).map((covers) => ({ value: covers, label: classRoom.covers[covers] }))} onValue={(catch_covers) => onChange({ catch_covers })} />
          <TextField label={classRoom.tips} required={form.catch_covers === "one_tip"} whole value={form.tips} onValue={(tips) => onChange({ tips })} />
        </div>
      )}
    </Section>
  );
}

function LearnerRow({ id, form, index }: { id: string; form: ClassForm; index: number }): JSX.Element {
  const { classRoom } = useWords();
  const learner = form.learners[index] ?? emptyLearner;
  const asked = askLearner(form, index);
  const result = asked?.answer?.learners?.[0];
  const note = asked?.refusal ? asked.refusal.detail : hasFigures(learner) ? [learner.times.filter(Boolean).join(", "), learner.catches.filter(Boolean).join(", ")].join(" · ") : classRoom.noFigures;
  return <ThingRow href={address("class", "group", id, "learner", String(index))} title={say(classRoom.learner, nameOf(learner, index))} note={note} end={result?.output ? show(result.output) : undefined} />;
}
