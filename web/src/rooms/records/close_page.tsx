// Closing: what will never change again, what stays not entered, and who signs. One entry carries it all.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { settings } from "@/app/settings";
import { useForm } from "@/notebook/forms";
import { useThing } from "@/notebook/notebook";
import { TextField, Tick } from "@/parts/fields";
import { Caution, Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, instant, today, useWords } from "@/words/words";
import { ChecksPart } from "./checks_part";
import { Gone } from "./form_page";
import { bodyOf, emptyDraft, type RecordDraft } from "./record_draft";
import { check, missingKeys, type RecordBody, type RecordThing } from "./standing";
import { labelOf } from "./tables";
import { ValuesTable } from "./values_table";

interface Closing {
  completed: string;
  completed_time: string;
  signed: string;
  /** The person has seen what stays not entered. */
  seen: boolean;
}

export function ClosePage({ id }: { id: string }): JSX.Element {
  const { records } = useWords();
  const record = useThing("record", id);
  if (record === undefined) return <Gone />;
  if (record.closed) {
    return (
      <main>
        <PageHead title={record.fields.name} back={address("records", id)} />
        <p class="refusal">{records.closedNoEdit}</p>
      </main>
    );
  }
  return <CloseOpen record={record} />;
}

/** The record with what closing adds: who completed it and when, and how long it is kept. */
function closedBody(fields: RecordBody, id: string, closing: Closing): RecordBody {
  const draft: RecordDraft = { ...emptyDraft(id), ...fields, values: { ...fields.values }, from: { ...fields.value_from }, authorities: fields.authorities ?? [], completed: closing.completed, completed_time: closing.completed_time || undefined };
  const signature = [closing.signed.trim(), closing.completed].filter((text) => text !== "").join(", ");
  if (closing.signed.trim() !== "") draft.values["completed_by_date"] = signature;
  const keep = check(bodyOf(draft))?.answer?.keep_until;
  if (keep !== undefined && (draft.values["retain_until"] ?? "") === "") draft.values["retain_until"] = keep;
  return bodyOf(draft);
}

function CloseOpen({ record }: { record: RecordThing }): JSX.Element {
  const { records } = useWords();
  const { id, fields } = record;
  const saving = useSaving();
  const form = useForm<Closing>(`record/${id}/close`, { completed: today(), completed_time: instant().slice(11, 16), signed: settings.now().author, seen: false });
  const { completed, completed_time, signed, seen } = form.value;
  const body = closedBody(fields, id, form.value);
  const asked = check(body);
  const missing = missingKeys(asked);
  const blocked = asked?.refusal !== undefined || signed.trim() === "" || (missing.length > 0 && !seen);
  const close = async () => {
    const saved = await saving.save([{ kind: "record", subject: id, body: { ...body, closed: true } }]);
    if (!saved) return;
    form.clear();
    goInstead("records", id);
  };
  return (
    <main>
      <PageHead title={records.closeTitle} back={address("records", id)} />
      <Caution>
        <p>{records.closeWhat}</p>
      </Caution>
      <div class="two">
        <TextField label={records.signed} hint={records.signedHint} value={signed} onValue={(text) => form.set({ signed: text })} />
        <TextField label={records.completedOn} type="date" value={completed} onValue={(text) => form.set({ completed: text })} />
        <TextField label={records.completedAt} type="time" required={false} value={completed_time} onValue={(text) => form.set({ completed_time: text })} />
      </div>
      <Section title={records.whatIsMissing}>
        <ChecksPart asked={asked} />
      </Section>
      {missing.length > 0 && (
        <Section title={records.staysMissing}>
          <ul class="field-names">
            {missing.map((key) => (
              <li key={key}>{labelOf(key)}</li>
            ))}
          </ul>
          <Tick label={count(missing.length, records.closeAnyway)} hint={records.closeAnywayHint} checked={seen} onValue={(on) => form.set({ seen: on })} />
        </Section>
      )}
      <Section title={records.willNotChange}>
        <ValuesTable record={{ ...record, fields: body }} missing={missing} />
      </Section>
      <SaveBar saving={saving} label={records.closeForGood} disabled={blocked} onSave={() => void close()} />
    </main>
  );
}
