// The first page: which job is on today.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { things, useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { ThingList, ThingRow } from "@/parts/list";
import { useRecording } from "@/positions/recorder";
import { showDate, today, useWords } from "@/words/words";

// Under way first, then what was planned for today, then the rest.
function place({ fields }: Thing<"job">): number {
  if (fields.state === "under_way") return 0;
  return fields.planned_for === today() ? 1 : 2;
}

export function PickPage(): JSX.Element {
  const { fieldDay, common } = useWords();
  const found = useRecording();
  const jobs = useThings("job").filter(({ fields }) => fields.state === "planned" || fields.state === "under_way");
  const sorted = [...jobs].sort((a, b) => place(a) - place(b));
  const note = ({ id, fields }: Thing<"job">) => {
    if (found?.head.use === "pass" && found.head.subject === id) return fieldDay.goOn;
    const stand = things("stand").find((one) => one.id === fields.stand)?.fields.name;
    const day = fields.planned_for && (fields.planned_for === today() ? common.today : showDate(fields.planned_for));
    return [stand, day, fieldDay.state[fields.state]].filter(Boolean).join(" · ");
  };
  return (
    <main>
      <PageHead title={fieldDay.title} />
      {jobs.length > 0 && <p>{fieldDay.pick}</p>}
      <ThingList
        empty={
          <>
            <p>{fieldDay.noJobs}</p>
            <a class="button main" href={address("jobs")}>
              {fieldDay.toJobs}
            </a>
          </>
        }
      >
        {sorted.map((job) => (
          <ThingRow key={job.id} href={address("field-day", job.id)} title={job.fields.name} note={note(job)} end={job.fields.net_area} />
        ))}
      </ThingList>
    </main>
  );
}
