// The season: every record with what it lacks, its deadline and its state, by year or by job.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { openFormNames } from "@/notebook/forms";
import { useThings } from "@/notebook/notebook";
import { Choice, TextField } from "@/parts/fields";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { count, say, showDate, useWords } from "@/words/words";
import { valuesNow } from "./amendments";
import { StateMark } from "./state_mark";
import { dayOf, entered, standingOf, type RecordThing, type Standing, type State } from "./standing";

type Show = "all" | State;
type By = "year" | "job";

interface Line {
  record: RecordThing;
  standing: Standing;
  group: string;
}

export function SeasonPage(): JSX.Element {
  const { records } = useWords();
  const all = useThings("record");
  const jobs = useThings("job");
  const [show, setShow] = useState<Show>("all");
  const [by, setBy] = useState<By>("year");
  const [wanted, setWanted] = useState("");
  const jobName = (id: string | undefined) => jobs.find((job) => job.id === id)?.fields.name ?? records.noJob;
  const lines = all
    .map((record): Line => {
      const group = by === "year" ? dayOf(record.fields).slice(0, 4) || records.noDate : jobName(record.fields.job);
      return { record, standing: standingOf(record), group };
    })
    .sort((a, b) => (dayOf(a.record.fields) < dayOf(b.record.fields) ? 1 : -1));
  const shown = lines.filter(({ record, standing }) => isIn(standing, show) && record.fields.name.toLowerCase().includes(wanted.toLowerCase()));
  const names = [...new Set(shown.map(({ group }) => group))].sort((a, b) => (by === "year" ? (a < b ? 1 : -1) : a.localeCompare(b)));
  return (
    <main>
      <PageHead title={records.title} />
      <a class="button main wide" href={address("records", "new")}>
        {records.newRecord}
      </a>
      <Begun jobName={jobName} />
      {all.length > 0 && <Filters {...{ lines, show, setShow, by, setBy, wanted, setWanted }} />}
      {all.length === 0 && <div class="empty">{records.empty}</div>}
      {all.length > 0 && shown.length === 0 && <div class="empty">{records.noneSuch}</div>}
      {names.map((name) => (
        <Section key={name} title={name}>
          <ThingList>{shown.filter(({ group }) => group === name).map((line) => <Row key={line.record.id} line={line} />)}</ThingList>
        </Section>
      ))}
    </main>
  );
}

/** Records somebody was in the middle of and has not saved. */
function Begun({ jobName }: { jobName: (id: string | undefined) => string }): JSX.Element | null {
  const { records } = useWords();
  const begun = openFormNames().flatMap((name) => (name.startsWith("record/new/") ? [name.slice("record/new/".length)] : []));
  if (begun.length === 0) return null;
  return (
    <Section title={records.begun}>
      <ThingList>
        {begun.map((job) => (
          <ThingRow key={job} href={address("records", "new", job)} title={job === "empty" ? records.withoutJobShort : jobName(job)} note={records.begunNote} />
        ))}
      </ThingList>
    </Section>
  );
}

const isIn = (standing: Standing, show: Show): boolean => (show === "all" ? true : show === "late" ? standing.late : show === "closed" ? standing.closed : !standing.closed);

interface FiltersProps {
  lines: Line[];
  show: Show;
  setShow: (show: Show) => void;
  by: By;
  setBy: (by: By) => void;
  wanted: string;
  setWanted: (text: string) => void;
}

function Filters({ lines, show, setShow, by, setBy, wanted, setWanted }: FiltersProps): JSX.Element {
  const { records, common } = useWords();
  const label = (which: Show) => `${records.filters[which]} (${lines.filter(({ standing }) => isIn(standing, which)).length})`;
  return (
    <div class="record-filters">
      <Choice label={records.show} value={show} options={(["all", "open", "late", "closed"] as const).map((which) => ({ value: which, label: label(which) }))} onValue={setShow} />
      <div class="two">
        <Choice label={records.groupBy} value={by} options={(["year", "job"] as const).map((which) => ({ value: which, label: records.by[which] }))} onValue={setBy} />
        {lines.length > 5 && <TextField label={common.searchHint} type="search" value={wanted} onValue={setWanted} />}
      </div>
    </div>
  );
}

function Row({ line: { record, standing } }: { line: Line }): JSX.Element {
  const { records } = useWords();
  const { missing, asked } = standing;
  const day = dayOf(record.fields);
  const carries = [
    day === "" ? records.noDate : showDate(day),
    count(entered(valuesNow(record)).length, records.carries),
    asked === undefined ? records.noAuthority : missing.length === 0 ? records.nothingMissing : count(missing.length, records.lacks),
    (record.amendments ?? []).length > 0 ? count((record.amendments ?? []).length, records.amended) : "",
  ].filter((text) => text !== "");
  const deadline = asked?.answer?.first_deadline;
  return (
    <ThingRow
      href={address("records", record.id)}
      title={record.fields.name}
      note={
        <>
          {carries.join(" · ")}
          {deadline && !standing.closed && <span class="record-due">{say(records.dueBy, deadline)}</span>}
        </>
      }
      end={<StateMark standing={standing} />}
    />
  );
}
