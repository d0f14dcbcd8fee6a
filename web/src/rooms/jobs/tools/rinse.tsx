import type { JSX } from "preact";
import { ask } from "@/core/core";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { TextField } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { useWords } from "@/words/words";
import { errorAt, whole } from "../job_data";
import { FormNotices } from "../steps";
import type { ToolProps } from "./tool_pages";

/** What rinsing leaves in the sprayer, and the rinses a target takes. */
export function Rinse({ job }: ToolProps): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.rinse;
  const first = { trapped: job?.fields.dead_volume ?? "", rinse_volume: "", rinses: "3", target: "", tank: job?.fields.tank_usable ?? "" };
  const { value: form, set, clear, resumed } = useForm(`jobs/rinse/${job?.id ?? "alone"}`, first);
  const asked = ask("rinse", { ...form, rinses: whole(form.rinses) });
  const answer = asked.answer;
  const field = (name: "trapped" | "rinse_volume" | "tank") => ({ value: form[name], units: unitsOf.tank, error: errorAt(asked, name, form[name]), onValue: (text: string) => set({ [name]: text }) });
  return (
    <>
      <FormNotices resumed={resumed} onClear={clear} />
      <AmountField label={words.trapped} hint={words.trappedHint} {...field("trapped")} />
      <div class="two">
        <AmountField label={words.each} {...field("rinse_volume")} />
        <TextField label={words.rinses} whole value={form.rinses} error={errorAt(asked, "rinses", form.rinses)} onValue={(rinses) => set({ rinses })} />
        <AmountField label={words.target} hint={words.targetHint} required={false} units={unitsOf.percent} value={form.target} error={errorAt(asked, "target", form.target)} onValue={(target) => set({ target })} />
        <AmountField label={words.tank} required={false} {...field("tank")} />
      </div>
      {form.trapped !== "" && <RefusalNote of={asked.refusal} />}
      {answer && (
        <section class="plan-answer">
          <Findings of={asked.findings} />
          <div class="figures">
            <Figure label={words.residue} of={asked} value={answer.residue} size="main" />
            <Figure label={words.oneBig} of={asked} value={answer.one_big_rinse} />
            <Figure label={words.needed} of={asked} value={answer.rinses_needed} />
            <Figure label={words.waterNeeded} of={asked} value={answer.water_needed} />
          </div>
          {(answer.steps?.length ?? 0) > 0 && (
            <table class="table">
              <thead>
                <tr>
                  <th scope="col">{words.rinses}</th>
                  <th scope="col" class="number">
                    {words.water}
                  </th>
                  <th scope="col" class="number">
                    {words.left}
                  </th>
                </tr>
              </thead>
              <tbody>
                {answer.steps?.map((step) => (
                  <tr key={step.rinses}>
                    <td>{step.rinses}</td>
                    <td class="number">{show(step.water)}</td>
                    <td class="number">{show(step.residue)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          <WorkingButton of={asked} title={jobs.tools.names.rinse} />
        </section>
      )}
    </>
  );
}
