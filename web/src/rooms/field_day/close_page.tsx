// The end of the day: what went on, beside the plan; then the record.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { show } from "@/core/quantity";
import { useNotebook } from "@/notebook/notebook";
import type { JobState, Thing } from "@/notebook/things";
import { Figure } from "@/parts/answer";
import { Findings, RefusalNote } from "@/parts/findings";
import { useSaving } from "@/parts/save_bar";
import { useRecording } from "@/positions/recorder";
import { say, useWords } from "@/words/words";
import { askClosing, loadsOf, openLoad, plannedLoads } from "./day_data";

export function ClosePage({ job }: { job: Thing<"job"> }): JSX.Element {
  useNotebook();
  const { fieldDay } = useWords();
  const saving = useSaving();
  const found = useRecording();
  const asked = askClosing(job.fields, job.id);
  const inTank = openLoad(job.id);
  const recorded = found?.head.use === "pass" && found.head.subject === job.id;
  const done = job.fields.state === "done";
  const set = (state: JobState) => void saving.save([{ kind: "job", subject: job.id, body: { state } }]);
  const { answer } = asked ?? {};
  return (
    <main>
      <PageHead title={fieldDay.close} back={address("field-day", job.id)} />
      <p>{fieldDay.closeIntro}</p>
      {recorded && <p class="refusal">{fieldDay.openPass}</p>}
      {inTank && <p class="refusal">{say(fieldDay.openLoadStill, inTank.fields.number)}</p>}
      <p>
        {fieldDay.loadsMixed}: <strong>{say(fieldDay.loadsOf, loadsOf(job.id).length, plannedLoads(job.fields).length)}</strong>
      </p>
      {asked && <RefusalNote of={asked.refusal} />}
      {asked && answer && (
        <>
          <div class="figures">
            <Figure size="main" label={fieldDay.swept} of={asked} value={answer.swept_area} note={answer.planned_area && say(fieldDay.sweptOf, show(answer.planned_area))} />
            <Figure label={fieldDay.applied} of={asked} value={answer.mix?.applied} />
            <Figure label={fieldDay.difference} of={asked} value={answer.mix?.difference} />
            {(answer.products ?? []).map((product) => (
              <Figure key={product.name} label={say(fieldDay.productUsed, product.name ?? "")} of={asked} value={product.used ?? product.used_weight} />
            ))}
          </div>
          <Findings of={asked.findings} />
        </>
      )}
      {saving.trouble}
      {done ? (
        <p role="status">
          <strong>{fieldDay.isDone}</strong>
        </p>
      ) : (
        <button type="button" class="button main wide" disabled={recorded || saving.busy} onClick={() => set("done")}>
          {fieldDay.jobDone}
        </button>
      )}
      {(done || job.fields.state === "planned") && (
        <button type="button" class="button wide" disabled={saving.busy} onClick={() => set("under_way")}>
          {fieldDay.jobGoesOn}
        </button>
      )}
      <a class={done ? "button main wide" : "button wide"} href={address("records", "new", job.id)}>
        {fieldDay.toRecord}
      </a>
    </main>
  );
}
