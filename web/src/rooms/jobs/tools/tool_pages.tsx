// Tools beside the plan: each reachable alone, and from a job with its figures put in already.
import type { ComponentType, JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import type { Thing } from "@/notebook/things";
import { ThingRow } from "@/parts/list";
import { useWords } from "@/words/words";
import { CrewPage } from "../work/crew";
import { Leftover } from "./leftover";
import { Reentry } from "./reentry";
import { Rinse } from "./rinse";
import { Substitute } from "./substitute";
import { Water } from "./water";

export interface ToolProps {
  job?: Thing<"job">;
}
const tools = { rinse: Rinse, leftover: Leftover, substitute: Substitute, water: Water, reentry: Reentry } satisfies Record<string, ComponentType<ToolProps>>;
type ToolName = keyof typeof tools;
const isTool = (name: string): name is ToolName => name in tools;

export function ToolList(): JSX.Element {
  const { jobs } = useWords();
  return (
    <main>
      <PageHead title={jobs.tools.title} back={address("jobs")} />
      <ul class="things">
        {(Object.keys(tools) as ToolName[]).map((name) => (
          <ThingRow key={name} href={address("jobs", "tools", name)} title={jobs.tools.names[name]} note={jobs.tools.whats[name]} />
        ))}
        <ThingRow href={address("jobs", "tools", "crew")} title={jobs.crew.title} note={jobs.crew.what} />
      </ul>
    </main>
  );
}

export function ToolPage({ name, job }: ToolProps & { name: string }): JSX.Element {
  const { common, jobs } = useWords();
  const back = job === undefined ? address("jobs", "tools") : address("jobs", job.id);
  if (name === "crew") return <CrewPage job={job} />;
  if (!isTool(name)) {
    return (
      <main>
        <PageHead title={jobs.tools.title} back={back} />
        <div class="empty">{common.notFound}</div>
      </main>
    );
  }
  const Tool = tools[name];
  return (
    <main>
      <PageHead title={jobs.tools.names[name]} back={back} />
      {job && <p class="job-name">{job.fields.name}</p>}
      <Tool job={job} />
    </main>
  );
}
