// A correction of a closed record: the day, the reason, and each field with what should stand there.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useForm } from "@/notebook/forms";
import { useThing } from "@/notebook/notebook";
import { Pick, TextField } from "@/parts/fields";
import { Caution, Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, today, useWords } from "@/words/words";
import { valuesNow } from "./amendments";
import { Gone } from "./form_page";
import { isDay, type RecordThing, type Values } from "./standing";
import { fields, fieldOf, labelOf } from "./tables";

interface Draft {
  date: string;
  reason: string;
  values: Values;
}

export function AmendPage({ id }: { id: string }): JSX.Element {
  const { records } = useWords();
  const record = useThing("record", id);
  if (record === undefined) return <Gone />;
  if (record.closed === undefined) {
    return (
      <main>
        <PageHead title={record.fields.name} back={address("records", id)} />
        <p>{records.openNoAmend}</p>
        <a class="button main wide" href={address("records", id, "edit")}>
          {records.goOn}
        </a>
      </main>
    );
  }
  return <AmendClosed record={record} />;
}

function AmendClosed({ record }: { record: RecordThing }): JSX.Element {
  const { records, common } = useWords();
  const { id } = record;
  const saving = useSaving();
  const form = useForm<Draft>(`record/${id}/amend`, { date: today(), reason: "", values: {} });
  const { date, reason, values } = form.value;
  const before = valuesNow(record);
  const chosen = Object.keys(values);
  const changed = chosen.filter((key) => values[key]?.trim() !== (before[key] ?? ""));
  const ready = isDay(date) && reason.trim() !== "" && changed.length > 0;
  const put = (key: string, text: string) => form.set((draft) => ({ ...draft, values: { ...draft.values, [key]: text } }));
  const remove = (key: string) => form.set((draft) => ({ ...draft, values: Object.fromEntries(Object.entries(draft.values).filter(([each]) => each !== key)) }));
  const save = async () => {
    const corrected = Object.fromEntries(changed.map((key) => [key, values[key]?.trim() ?? ""]));
    const saved = await saving.save([{ kind: "amendment", subject: id, body: { date, reason: reason.trim(), values: corrected } }]);
    if (!saved) return;
    form.clear();
    goInstead("records", id);
  };
  return (
    <main>
      <PageHead title={say(records.amendTitle, record.fields.name)} back={address("records", id)} />
      <Caution>
        <p>{records.amendWhat}</p>
      </Caution>
      {form.resumed && <p class="hint">{common.resumed}</p>}
      <TextField label={records.amendDate} type="date" value={date} onValue={(text) => form.set({ date: text })} />
      <TextField label={records.reason} hint={records.reasonHint} long value={reason} onValue={(text) => form.set({ reason: text })} />
      <Section title={records.corrections}>
        {chosen.map((key) => (
          <div class="correction" key={key}>
            <p class="record-source">{say(records.standsNow, before[key] ?? common.notEntered)}</p>
            <TextField label={labelOf(key)} long={fieldOf(key)?.box === "long"} value={values[key]} onValue={(text) => put(key, text)} />
            <button type="button" class="button quiet" onClick={() => remove(key)}>
              {say(records.leaveAsIs, labelOf(key))}
            </button>
          </div>
        ))}
        <Pick
          label={records.pickField}
          required={false}
          value={undefined}
          options={fields.filter(({ key }) => !chosen.includes(key)).map(({ key }) => ({ value: key, label: labelOf(key) }))}
          onValue={(key) => key && put(key, before[key] ?? "")}
        />
      </Section>
      <SaveBar saving={saving} label={records.saveAmendment} disabled={!ready} onSave={() => void save()} />
    </main>
  );
}
