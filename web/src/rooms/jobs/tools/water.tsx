import type { JSX } from "preact";
import { ask } from "@/core/core";
import type { HardnessScale, LoadsAnswer } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { Pick, TextField } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { say, useWords } from "@/words/words";
import { errorAt } from "../job_data";
import { FormNotices } from "../steps";
import type { ToolProps } from "./tool_pages";

const minerals = ["calcium", "magnesium", "sodium", "potassium", "iron"] as const;
const amsUnits = { us: ["lb/100 gal", "kg/100 L"], metric: ["kg/100 L", "lb/100 gal"] };

/** Ammonium sulphate that hard water asks for, beside what the label asks for. */
export function Water({ job }: ToolProps): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.water;
  const plan = job?.fields.plan;
  const fill = plan?.operation === "loads" ? show((plan.answer as LoadsAnswer).loads?.[0]?.fill) : "";
  const first = { calcium: "", magnesium: "", sodium: "", potassium: "", iron: "", hardness: "", scale: "ppm_calcium_carbonate" as HardnessScale, label_least: "", label_most: "", tank: fill || (job?.fields.tank_usable ?? "") };
  const { value: form, set, clear, resumed } = useForm(`jobs/water/${job?.id ?? "alone"}`, first);
  const { hardness, scale, tank, ...rest } = form;
  const lumped = Number(hardness.replace(",", "."));
  const asked = ask("water", { ...rest, ...(hardness !== "" && Number.isFinite(lumped) ? { hardness: lumped, hardness_scale: scale } : {}), tanks: tank === "" ? [] : [tank] });
  const begun = hardness !== "" || minerals.some((name) => form[name] !== "");
  const answer = asked.answer;
  const fillAnswer = answer?.tanks?.[0];
  return (
    <>
      <FormNotices resumed={resumed} onClear={clear} />
      <p class="hint">{words.hint}</p>
      <div class="two">
        {minerals.map((name) => (
          <AmountField key={name} label={words.minerals[name]} required={false} units={unitsOf.hardness} value={form[name]} error={errorAt(asked, name, form[name])} onValue={(text) => set({ [name]: text })} />
        ))}
      </div>
      <div class="two">
        <TextField label={words.hardness} hint={words.hardnessHint} required={false} value={hardness} error={hardness !== "" && !Number.isFinite(lumped) ? words.hardnessWrong : errorAt(asked, "hardness", hardness)} onValue={(text) => set({ hardness: text })} />
        {hardness !== "" && <Pick label={words.scale} value={scale} options={(Object.keys(words.scales) as HardnessScale[]).map((value) => ({ value, label: words.scales[value] }))} onValue={(next) => set({ scale: next })} />}
        <AmountField label={words.least} hint={words.labelHint} required={false} units={amsUnits} value={form.label_least} error={errorAt(asked, "label_least", form.label_least)} onValue={(label_least) => set({ label_least })} />
        <AmountField label={words.most} hint={words.labelHint} required={false} units={amsUnits} value={form.label_most} error={errorAt(asked, "label_most", form.label_most)} onValue={(label_most) => set({ label_most })} />
        <AmountField label={words.tank} required={false} units={unitsOf.tank} value={tank} error={errorAt(asked, "tanks[0]", tank)} onValue={(text) => set({ tank: text })} />
      </div>
      {begun && <RefusalNote of={asked.refusal} />}
      {begun && answer && (
        <section class="plan-answer">
          <Findings of={asked.findings} />
          <div class="figures">
            <Figure label={words.ams} of={asked} value={answer.ams} size="main" />
            <Figure label={words.total} of={asked} value={answer.hardness} />
            <Figure label={words.asksLeast} of={asked} value={answer.hardness_asks_least} />
            <Figure label={words.asksMost} of={asked} value={answer.hardness_asks_most} />
            {fillAnswer && <Figure label={say(words.inTank, show(fillAnswer.tank))} of={asked} value={fillAnswer.by_minerals_text || undefined} />}
            {fillAnswer && <Figure label={words.labelLeast} of={asked} value={fillAnswer.label_least_text || undefined} />}
            {fillAnswer && <Figure label={words.labelMost} of={asked} value={fillAnswer.label_most_text || undefined} />}
          </div>
          {(answer.not_entered?.length ?? 0) > 0 && <p class="not-entered">{say(words.missing, (answer.not_entered ?? []).map((name) => (words.minerals as Record<string, string>)[name] ?? name).join(", "))}</p>}
          <WorkingButton of={asked} title={jobs.tools.names.water} />
        </section>
      )}
    </>
  );
}
