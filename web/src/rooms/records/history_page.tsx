// Every entry of a record, who wrote it and when, and whether the chain of seals holds.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { withDatabase } from "@/notebook/database";
import { chainProblems, conflicts, history, useNotebook, useThing } from "@/notebook/notebook";
import { Section } from "@/parts/list";
import { say, showDate, showTime, useWords } from "@/words/words";
import { Gone } from "./form_page";
import { labelOf } from "./tables";

interface Line {
  id: string;
  made: string;
  author: string;
  device: string;
  seal: string;
  what: string;
}

type Words = ReturnType<typeof useWords>["records"];

async function linesOf(id: string, records: Words): Promise<Line[]> {
  const rows = await withDatabase((open) => open.getAllFromIndex("entries", "subject", id));
  const seals = new Map(rows.map((row) => [row.id, /^hash ([0-9a-f]+)/m.exec(row.text)?.[1] ?? ""]));
  const entries = [...(await history("record", id)), ...(await history("amendment", id))].sort((a, b) => (a.made < b.made ? -1 : 1));
  return entries.map(({ id: entry, made, author, device, body }) => ({ id: entry, made, author, device, seal: seals.get(entry) ?? "", what: whatOf(body as Record<string, unknown>, records) }));
}

function whatOf(body: Record<string, unknown>, records: Words): string {
  if (body["closed"] === true) return records.entryClosed;
  const values = Object.keys((body["values"] ?? {}) as object).map(labelOf);
  if (typeof body["reason"] === "string") return say(records.entryAmended, values.join(", "), body["reason"]);
  return say(records.entryWritten, values.length);
}

export function HistoryPage({ id }: { id: string }): JSX.Element {
  const { records } = useWords();
  const version = useNotebook();
  const record = useThing("record", id);
  const [lines, setLines] = useState<Line[]>();
  const [faults, setFaults] = useState<string[]>();
  useEffect(() => {
    void linesOf(id, records).then(setLines);
    void chainProblems().then((problems) => setFaults(problems.map(({ text }) => text)));
  }, [id, version, records]);
  if (record === undefined) return <Gone />;
  const clashes = conflicts().filter((conflict) => conflict.record === id);
  return (
    <main>
      <PageHead title={say(records.historyOf, record.fields.name)} back={address("records", id)} />
      <Section title={records.chain}>
        <p role="status">{faults === undefined ? records.chainChecking : faults.length === 0 ? records.chainSound : records.chainBroken}</p>
        {faults?.map((fault) => (
          <p class="refusal" key={fault}>
            {fault}
          </p>
        ))}
        {clashes.map(({ entry, text }) => (
          <p class="refusal" key={entry}>
            {text}
          </p>
        ))}
      </Section>
      <Section title={records.entries}>
        <ol class="entries">
          {(lines ?? []).map((line) => (
            <li key={line.id}>
              <strong>{line.what}</strong>
              <span>
                {line.author}, {showDate(line.made)}, {showTime(line.made.replace(/#.*/, ""))}
              </span>
              <small>
                {say(records.device, line.device.slice(-8))}. {records.seal} <code>{line.seal}</code>
              </small>
            </li>
          ))}
        </ol>
      </Section>
    </main>
  );
}
