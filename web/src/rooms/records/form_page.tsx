// Filling a record in: new from a job, or an open one further. The judgement of each authority is live.
import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { newId, thing, things, useThing } from "@/notebook/notebook";
import { useForm, type Form } from "@/notebook/forms";
import { ClearForm } from "@/parts/clear_form";
import { TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, say, today, useWords } from "@/words/words";
import { AuthoritiesPart } from "./authorities_part";
import { ChecksPart } from "./checks_part";
import { FieldsPart } from "./fields_part";
import { prefill } from "./prefill";
import { bodyOf, emptyDraft, type RecordDraft } from "./record_draft";
import { check, missingKeys, type RecordThing } from "./standing";

export function NewPage({ job }: { job: string }): JSX.Element {
  const { records } = useWords();
  const found = useThing("job", job);
  const first = useMemo(() => firstDraft(job), [job]);
  const form = useForm<RecordDraft>(`record/new/${job}`, first);
  const title = found ? say(records.recordOf, found.fields.name) : records.newRecord;
  return <FormPage title={title} back={address("records", "new")} form={form} />;
}

function firstDraft(jobId: string): RecordDraft {
  const id = newId();
  const job = thing("job", jobId);
  const { values, from } = prefill({ things }, jobId);
  const last = [...things("record")].sort((a, b) => (a.created < b.created ? 1 : -1))[0];
  return {
    ...emptyDraft(id),
    name: job?.fields.name ?? "",
    job: job?.id,
    authorities: last?.fields.authorities ?? [],
    values: { record_id: id, ...values, date: values["date"] ?? today() },
    from: { record_id: "notebook", ...from, ...(values["date"] === undefined ? { date: "today" } : {}) },
  };
}

export function EditPage({ id }: { id: string }): JSX.Element {
  const { records, common } = useWords();
  const record = useThing("record", id);
  if (record === undefined) return <Gone />;
  if (record.closed) {
    return (
      <main>
        <PageHead title={record.fields.name} back={address("records", id)} />
        <p class="refusal">{records.closedNoEdit}</p>
        <a class="button main wide" href={address("records", id, "amend")}>
          {records.amend}
        </a>
        <a class="button wide" href={address("records", id)}>
          {common.back}
        </a>
      </main>
    );
  }
  return <EditOpen record={record} />;
}

function EditOpen({ record }: { record: RecordThing }): JSX.Element {
  const { id, fields } = record;
  const first: RecordDraft = { ...emptyDraft(id), ...fields, values: fields.values ?? {}, from: fields.value_from ?? {}, authorities: fields.authorities ?? [] };
  const form = useForm<RecordDraft>(`record/${id}`, first);
  return <FormPage title={fields.name} back={address("records", id)} form={form} />;
}

export function Gone(): JSX.Element {
  const { records, common } = useWords();
  return (
    <main>
      <PageHead title={records.title} back={address("records")} />
      <p class="refusal">{common.notFound}</p>
    </main>
  );
}

function FormPage({ title, back, form }: { title: string; back: string; form: Form<RecordDraft> }): JSX.Element {
  const { records, common } = useWords();
  const saving = useSaving();
  const draft = form.value;
  const [others, setOthers] = useState(false);
  const body = bodyOf(draft);
  const asked = check(body);
  const missing = missingKeys(asked).length;
  const save = async () => {
    const saved = await saving.save([{ kind: "record", subject: draft.id, body: { ...body, end_date: body.end_date ?? null } }]);
    if (!saved) return;
    form.clear();
    goInstead("records", draft.id);
  };
  return (
    <main>
      <PageHead title={title} back={back} />
      {form.resumed && <p class="hint">{common.resumed}</p>}
      <TextField label={records.name} value={draft.name} onValue={(name) => form.set({ name })} />
      <AuthoritiesPart draft={draft} onChange={form.set} />
      <Section title={records.whatIsMissing}>
        <ChecksPart asked={asked} />
      </Section>
      <FieldsPart draft={draft} asked={asked} all={others} onChange={form.set} />
      <button type="button" class="button wide" aria-expanded={others} onClick={() => setOthers(!others)}>
        {others ? records.fewerFields : records.allFields}
      </button>
      {form.resumed && <ClearForm onClear={form.clear} />}
      <p class="form-sum" role="status">
        {asked?.answer && (missing === 0 ? records.nothingMissing : `${count(missing, records.lacks)}.`)}
      </p>
      <SaveBar saving={saving} disabled={draft.name.trim() === ""} onSave={() => void save()} label={records.saveOpen} />
    </main>
  );
}
