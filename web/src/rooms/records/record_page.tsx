// One record: its state, what each authority lacks, every value with its corrections, what is attached.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThing } from "@/notebook/notebook";
import { Section } from "@/parts/list";
import { say, showDate, showTime, useWords } from "@/words/words";
import { amendmentsOf } from "./amendments";
import { AttachmentsPart } from "./attachments_part";
import { ChecksPart } from "./checks_part";
import { Gone } from "./form_page";
import { StateMark } from "./state_mark";
import { standingOf, type RecordThing, type Standing } from "./standing";
import { ValuesTable } from "./values_table";

export function RecordPage({ id }: { id: string }): JSX.Element {
  const { records } = useWords();
  const record = useThing("record", id);
  if (record === undefined) return <Gone />;
  const standing = standingOf(record);
  return (
    <main>
      <PageHead title={record.fields.name} back={address("records")} />
      <StatePart record={record} standing={standing} />
      <Acts record={record} />
      <Section title={records.whatIsMissing}>
        <ChecksPart asked={standing.asked} />
      </Section>
      <Section title={records.values}>
        <ValuesTable record={record} missing={standing.missing} />
      </Section>
      <AmendmentsPart record={record} />
      <AttachmentsPart id={id} />
    </main>
  );
}

function StatePart({ record, standing }: { record: RecordThing; standing: Standing }): JSX.Element {
  const { records } = useWords();
  const { closed } = record;
  return (
    <div class="record-state">
      <StateMark standing={standing} />
      <p>{closed ? say(records.closedBy, closed.by, `${showDate(closed.at)}, ${showTime(closed.at.replace(/#.*/, ""))}`) : records.openStill}</p>
    </div>
  );
}

function Acts({ record: { id, closed } }: { record: RecordThing }): JSX.Element {
  const { records } = useWords();
  return (
    <div class="record-acts">
      {closed ? (
        <a class="button main" href={address("records", id, "amend")}>
          {records.amend}
        </a>
      ) : (
        <>
          <a class="button main" href={address("records", id, "edit")}>
            {records.goOn}
          </a>
          <a class="button" href={address("records", id, "close")}>
            {records.closeIt}
          </a>
        </>
      )}
      <a class="button" href={address("records", "paper", "record", id)}>
        {records.print}
      </a>
      <a class="button" href={address("records", id, "history")}>
        {records.history}
      </a>
    </div>
  );
}

function AmendmentsPart({ record }: { record: RecordThing }): JSX.Element | null {
  const { records } = useWords();
  const amendments = amendmentsOf(record);
  if (amendments.length === 0) return null;
  return (
    <Section title={records.amendments}>
      <ol class="amendments">
        {amendments.map(({ at, author, date, reason, changes }) => (
          <li key={at}>
            <strong>{showDate(date)}</strong> {author}
            <p>{reason}</p>
            <dl class="values">
              {changes.map(({ label, before, after }) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd>
                    <del>{before || records.none}</del> <ins>{after}</ins>
                  </dd>
                </div>
              ))}
            </dl>
          </li>
        ))}
      </ol>
    </Section>
  );
}
