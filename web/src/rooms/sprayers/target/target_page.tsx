// From the last calibration to a wanted output: by speed, by pressure, by other tips, each with its window.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { ask, type Asked } from "@/core/core";
import type { ClassBand, DropletClass } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { useNotebook } from "@/notebook/notebook";
import type { Calibration, Sprayer, Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { ClearForm } from "@/parts/clear_form";
import { Pick } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, showDate, useWords, type Words } from "@/words/words";
import { calibrationsOf, dayOf } from "../known";
import { AdjustPart } from "./adjust_part";
import { ClassRows, type ClassRow } from "./class_rows";
import { TipChoices } from "./tip_choices";

export interface TargetForm {
  target: string;
  speed_low: string;
  speed_high: string;
  pressure: string;
  pressure_low: string;
  pressure_high: string;
  droplets: string;
  classes: ClassRow[];
}

const bandsOf = (rows: ClassRow[]): ClassBand[] => rows.filter(({ from, to, class: name }) => from && to && name).map((row) => ({ ...row, class: row.class as DropletClass }));

/** The present state of the sprayer: what the calibration measured, never what a sticker says. */
function askAdjust(form: TargetForm, sprayer: Sprayer, { answer, request }: Calibration): Asked<"adjust"> {
  return ask("adjust", {
    target: form.target,
    rate: answer.output,
    speed: answer.speed,
    pressure: form.pressure,
    ...(answer.width ? { width: answer.width, tips: request?.tips ?? sprayer.tips } : { spacing: sprayer.spacing }),
    droplets: form.droplets,
    pressure_low: form.pressure_low,
    pressure_high: form.pressure_high,
    speed_low: form.speed_low,
    speed_high: form.speed_high,
    classes: bandsOf(form.classes),
    speeds: [form.speed_low, form.speed_high],
  });
}

function askTip(form: TargetForm, sprayer: Sprayer, { answer, request }: Calibration): Asked<"choose-tip"> | undefined {
  if (answer.speed === undefined || (answer.width === undefined && !sprayer.spacing)) return undefined;
  return ask("choose-tip", {
    rate: form.target,
    speed: answer.speed,
    speed_low: form.speed_low,
    speed_high: form.speed_high,
    ...(answer.width ? { width: answer.width, tips: request?.tips ?? sprayer.tips } : { spacing: sprayer.spacing }),
    pressure_low: form.pressure_low,
    pressure_high: form.pressure_high,
    droplets: form.droplets,
  });
}

// What labels say of droplets is a class "or coarser"; the core reads it in English.
const englishNames = { M: "medium", C: "coarse", VC: "very coarse", XC: "extremely coarse", UC: "ultra coarse" } as const;

function coarseness(words: Words["sprayers"]["target"]) {
  const classes = Object.keys(englishNames) as Array<keyof typeof englishNames>;
  return classes.map((name) => ({ value: `${englishNames[name]} or coarser`, label: say(words.orCoarser, words.classNames[name]) }));
}

export function TargetPage({ sprayer }: { sprayer: Thing<"sprayer"> }): JSX.Element {
  useNotebook();
  const { sprayers } = useWords();
  const words = sprayers.target;
  const last = calibrationsOf(sprayer.id).find(({ fields }) => fields.answer?.output !== undefined);
  return (
    <main class="target">
      <PageHead title={words.title} back={address("sprayers", sprayer.id)} />
      {last === undefined ? (
        <>
          <p class="empty">{words.noCalibration}</p>
          <a class="button main" href={address("sprayers", sprayer.id, "calibrate")}>
            {sprayers.page.calibrate}
          </a>
        </>
      ) : (
        <Reckoning sprayer={sprayer} last={last} />
      )}
    </main>
  );
}

function Reckoning({ sprayer: { id, fields }, last }: { sprayer: Thing<"sprayer">; last: Thing<"calibration"> }): JSX.Element {
  const words = useWords().sprayers.target;
  const first: TargetForm = { target: "", speed_low: "", speed_high: "", pressure: last.fields.pressure ?? fields.pressure ?? "", pressure_low: "", pressure_high: "", droplets: "", classes: [] };
  const { value: form, set, clear, resumed } = useForm<TargetForm>(`target/${id}`, first);
  const started = form.target !== "";
  const adjust = started ? askAdjust(form, fields, last.fields) : undefined;
  const tips = started ? askTip(form, fields, last.fields) : undefined;
  const problem = (field: keyof TargetForm) => (adjust?.refusal?.field === field && form[field] !== "" ? adjust.refusal.detail : undefined);
  const named = ["target", "speed_low", "speed_high", "pressure", "pressure_low", "pressure_high", "droplets"].includes(adjust?.refusal?.field ?? "");
  const from = `${show(last.fields.answer.output)}${last.fields.answer.speed ? `, ${show(last.fields.answer.speed)}` : ""}, ${showDate(dayOf(last))}`;
  return (
    <>
      <p>{say(words.intro, from)}</p>
      <AmountField label={words.target} value={form.target} units={unitsOf.mixPerArea} error={problem("target")} onValue={(target) => set({ target })} />
      <div class="two">
        <AmountField label={words.speedLow} value={form.speed_low} units={unitsOf.speed} error={problem("speed_low")} onValue={(speed_low) => set({ speed_low })} required={false} />
        <AmountField label={words.speedHigh} value={form.speed_high} units={unitsOf.speed} error={problem("speed_high")} onValue={(speed_high) => set({ speed_high })} required={false} />
        <AmountField label={words.pressureNow} value={form.pressure} units={unitsOf.pressure} error={problem("pressure")} onValue={(pressure) => set({ pressure })} required={false} />
        <Pick label={words.droplets} hint={words.dropletsHint} value={form.droplets} options={coarseness(words)} error={problem("droplets")} onValue={(droplets) => set({ droplets })} required={false} />
        <AmountField label={words.pressureLow} value={form.pressure_low} units={unitsOf.pressure} error={problem("pressure_low")} onValue={(pressure_low) => set({ pressure_low })} required={false} />
        <AmountField label={words.pressureHigh} hint={words.pressureHint} value={form.pressure_high} units={unitsOf.pressure} error={problem("pressure_high")} onValue={(pressure_high) => set({ pressure_high })} required={false} />
      </div>
      <ClassRows rows={form.classes} onRows={(classes) => set({ classes })} />
      {adjust === undefined && <p class="empty">{words.enterTarget}</p>}
      {adjust?.refusal && !named && <RefusalNote of={adjust.refusal} />}
      {adjust?.answer && (
        <>
          <AdjustPart of={adjust} />
          <Findings of={adjust.findings} />
        </>
      )}
      {tips?.answer && (
        <Section title={words.choices}>
          <TipChoices of={tips} />
        </Section>
      )}
      {resumed && started && <ClearForm onClear={clear} />}
    </>
  );
}
