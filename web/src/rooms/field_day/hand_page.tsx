// Passes without positions: one press a run. Every press is on disk.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { ask } from "@/core/core";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { newId } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { RefusalNote } from "@/parts/findings";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, instant, say, useWords } from "@/words/words";
import { openLoad, underWay, widthOf } from "./day_data";

export function HandPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { fieldDay } = useWords();
  const form = useForm(`hand/${job.id}`, { runs: 0, length: "", width: widthOf(job.fields), begun: "" });
  const saving = useSaving();
  const { runs, length, width, begun } = form.value;
  const one = (by: number) => form.set((before) => ({ ...before, runs: Math.max(0, before.runs + by), begun: before.begun || instant() }));
  const passes = Array.from({ length: runs }, (_, index) => ({ name: String(index + 1), length, width }));
  const asked = runs > 0 && length !== "" && width !== "" ? ask("balance", { planned_area: job.fields.net_area, passes }) : undefined;
  const save = async () => {
    if (asked?.answer === undefined) return;
    const load = openLoad(job.id);
    const body = { job: job.id, load: load?.id, begun_at: begun, ended_at: instant(), width, by_hand: { count: runs, length }, swept: asked.answer };
    if (!(await saving.save([{ kind: "pass", subject: newId(), body }, ...underWay(job)]))) return;
    form.clear();
    goInstead("field-day", job.id);
  };
  return (
    <main>
      <PageHead title={fieldDay.handTitle} back={address("field-day", job.id)} />
      <p>{fieldDay.handIntro}</p>
      <div class="two">
        <AmountField label={fieldDay.runLength} value={length} units={unitsOf.length} onValue={(text) => form.set({ length: text })} />
        <AmountField label={fieldDay.width} value={width} units={unitsOf.length} onValue={(text) => form.set({ width: text })} />
      </div>
      <p class="run-count" role="status">
        {count(runs, fieldDay.runs)}
      </p>
      {asked?.answer && <Figure label={fieldDay.swept} of={asked} value={asked.answer.swept_area} note={asked.answer.planned_area && say(fieldDay.sweptOf, show(asked.answer.planned_area))} />}
      <RefusalNote of={asked?.refusal} />
      <div class="acts">
        <button type="button" class="button go wide" onClick={() => one(1)}>
          {fieldDay.handOne}
        </button>
        <button type="button" class="button wide" disabled={runs === 0} onClick={() => one(-1)}>
          {fieldDay.handBack}
        </button>
      </div>
      <SaveBar saving={saving} onSave={() => void save()} disabled={asked?.answer === undefined} label={fieldDay.savePass} />
    </main>
  );
}
