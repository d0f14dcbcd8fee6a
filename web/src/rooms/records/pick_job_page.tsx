// A record begins at a job: what the notebook knows of it is filled in. Without one, it begins empty.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThings } from "@/notebook/notebook";
import { ThingList, ThingRow } from "@/parts/list";
import { showDate, useWords } from "@/words/words";

export function PickJobPage(): JSX.Element {
  const { records } = useWords();
  const jobs = useThings("job").filter(({ fields }) => fields.state !== "called_off");
  const recorded = useThings("record");
  const hasRecord = (id: string) => recorded.some(({ fields }) => fields.job === id);
  return (
    <main>
      <PageHead title={records.newRecord} back={address("records")} />
      <p>{records.pickJob}</p>
      <ThingList empty={records.noJobs}>
        {jobs.map(({ id, fields }) => (
          <ThingRow
            key={id}
            href={address("records", "new", id)}
            title={fields.name}
            note={[fields.planned_for && showDate(fields.planned_for), fields.customer].filter(Boolean).join(" · ")}
            end={hasRecord(id) ? records.hasRecord : undefined}
          />
        ))}
      </ThingList>
      <a class="button wide" href={address("records", "new", "empty")}>
        {records.withoutJob}
      </a>
    </main>
  );
}
