// One job: what it is, where it stands, and the way to each thing one does with it.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { openFormNames } from "@/notebook/forms";
import { useThing, useThings } from "@/notebook/notebook";
import type { Job, JobState, Thing } from "@/notebook/things";
import { Choice } from "@/parts/fields";
import { Section, ThingRow } from "@/parts/list";
import { useSaving } from "@/parts/save_bar";
import { showDate, useWords } from "@/words/words";
import { isOlderThanJob, workOf } from "./job_data";
import { JobForm } from "./job_form";
import { MixingCard } from "./plan/mixing_card";
import { PlanPage } from "./plan/plan_page";
import { SavedPlan } from "./plan/saved_plan";
import { WhatIf } from "./plan/what_if";
import { ToolPage } from "./tools/tool_pages";
import { CrewPage } from "./work/crew";
import { SpotPage } from "./work/spot";
import { StemsPage } from "./work/stems";

export function JobPage({ id, path }: { id: string; path: string[] }): JSX.Element {
  const { common, jobs } = useWords();
  const job = useThing("job", id);
  if (job === undefined) {
    return (
      <main>
        <PageHead title={jobs.title} back={address("jobs")} />
        <div class="empty">{common.notFound}</div>
      </main>
    );
  }
  const [part, name] = path;
  if (part === "edit") return <JobForm id={id} />;
  if (part === "plan") return <WorkPage job={job} />;
  if (part === "card") return <MixingCard job={job} />;
  if (part === "what-if") return <WhatIf job={job} />;
  if (part === "crew") return <CrewPage job={job} />;
  if (part === "tools" && name !== undefined) return <ToolPage name={name} job={job} />;
  return <Hub job={job} />;
}

function WorkPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const pages = { broadcast: PlanPage, spot: SpotPage, stems: StemsPage };
  const Page = pages[workOf(job.fields)];
  return <Page job={job} />;
}

function Hub({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs, records } = useWords();
  const { id, fields } = job;
  const work = workOf(fields);
  const planned = fields.plan?.answer !== undefined;
  const to = (...path: string[]) => address("jobs", id, ...path);
  return (
    <main>
      <PageHead title={fields.name || jobs.noName} back={address("jobs")} />
      <Facts job={job} />
      {planned && work === "broadcast" && (
        <a class="button main wide" href={to("card")}>
          {jobs.mixing.title}
        </a>
      )}
      <a class={planned && work === "broadcast" ? "button wide" : "button main wide"} href={to("plan")}>
        {planned ? jobs.hub.changePlan[work] : jobs.hub.makePlan[work]}
      </a>
      {openFormNames().includes(`jobs/plan/${id}`) && <p class="not-entered">{jobs.plan.unsaved}</p>}
      {isOlderThanJob(fields) && <p class="not-entered">{jobs.plan.older}</p>}
      <StateChoice job={job} />
      {fields.plan !== undefined && <SavedPlan plan={fields.plan} />}
      <Section title={jobs.hub.more}>
        <ul class="things">
          {planned && work === "broadcast" && <ThingRow href={to("what-if")} title={jobs.whatIf.title} note={jobs.whatIf.what} />}
          <ThingRow href={to("crew")} title={jobs.crew.title} note={jobs.crew.what} />
          {(["leftover", "rinse", "reentry", "substitute", "water"] as const).map((tool) => (
            <ThingRow key={tool} href={to("tools", tool)} title={jobs.tools.names[tool]} note={jobs.tools.whats[tool]} />
          ))}
          <ThingRow href={address("records", "new", id)} title={records.newRecord} note={records.newRecordNote} />
          <ThingRow href={address("records", "paper", "job", id)} title={jobs.hub.print} note={jobs.hub.printWhat} />
        </ul>
      </Section>
    </main>
  );
}

function Facts({ job: { id, fields } }: { job: Thing<"job"> }): JSX.Element {
  const { common, jobs } = useWords();
  const stand = useThing("stand", fields.stand);
  const sprayer = useThing("sprayer", fields.sprayer);
  const people = useThings("operator").filter((one) => fields.operators?.includes(one.id));
  const rows: Array<[string, string | undefined]> = [
    [jobs.form.work, jobs.works[workOf(fields)]],
    [jobs.form.target, fields.target],
    [jobs.form.day, fields.planned_for && showDate(fields.planned_for)],
    [jobs.form.stand, stand?.fields.name],
    [jobs.form.netArea, fields.net_area],
    [jobs.form.sprayer, sprayer?.fields.name],
    [jobs.form.who, people.map((one) => one.fields.name).join(", ")],
    [jobs.form.notes, fields.notes],
  ];
  const known = rows.filter(([, value]) => value);
  return (
    <>
      <dl class="values">
        {known.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <a class="button quiet" href={address("jobs", id, "edit")}>
        {common.change}
      </a>
    </>
  );
}

function StateChoice({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const saving = useSaving();
  const state = job.fields.state ?? "planned";
  const set = (next: JobState) => void saving.save([{ kind: "job", subject: job.id, body: { state: next } as Partial<Job> }]);
  const options = (["planned", "under_way", "done", "called_off"] as const).map((value) => ({ value, label: jobs.states[value] }));
  return (
    <>
      <Choice label={jobs.hub.setState} value={state} options={options} onValue={set} />
      {saving.trouble}
    </>
  );
}
