// All jobs by state, the label cards and the tools.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThings } from "@/notebook/notebook";
import type { JobState, Thing } from "@/notebook/things";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { workOf } from "./job_data";
import { count, showDate, useWords } from "@/words/words";

const order: JobState[] = ["under_way", "planned", "done", "called_off"];

export function JobList(): JSX.Element {
  const { jobs } = useWords();
  const all = useThings("job");
  const cards = useThings("product_card");
  const stateOf = (job: Thing<"job">): JobState => (order.includes(job.fields.state) ? job.fields.state : "planned");
  const groups = order.map((state) => ({ state, list: all.filter((job) => stateOf(job) === state) })).filter(({ list }) => list.length > 0);
  return (
    <main>
      <PageHead title={jobs.title} />
      <a class={all.length === 0 ? "button main wide" : "button wide"} href={address("jobs", "new")}>
        {jobs.newJob}
      </a>
      {all.length === 0 && <div class="empty">{jobs.empty}</div>}
      {groups.map(({ state, list }) => (
        <Section key={state} title={jobs.states[state]}>
          <ThingList>
            {list.map((job) => (
              <JobRow key={job.id} job={job} />
            ))}
          </ThingList>
        </Section>
      ))}
      <Section title={jobs.alsoHere}>
        <ul class="things">
          <ThingRow href={address("jobs", "cards")} title={jobs.cards.title} note={jobs.cards.what} end={cards.length > 0 ? count(cards.length, jobs.cards.number) : undefined} />
          <ThingRow href={address("jobs", "tools")} title={jobs.tools.title} note={jobs.tools.what} />
        </ul>
      </Section>
    </main>
  );
}

function JobRow({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const { name, planned_for, net_area } = job.fields;
  const note = [jobs.works[workOf(job.fields)], planned_for ? showDate(planned_for) : ""].filter(Boolean).join(" · ");
  return <ThingRow href={address("jobs", job.id)} title={name || jobs.noName} note={note} end={net_area} />;
}
