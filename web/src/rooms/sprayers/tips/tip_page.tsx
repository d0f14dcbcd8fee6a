// A tip check for itself: every tip for the same seconds, or flows read off a meter; saved as an entry.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useSettings, type Units } from "@/app/settings";
import { ask, withoutBlanks, type Asked } from "@/core/core";
import { model } from "@/core/version";
import { useForm } from "@/notebook/forms";
import { newId } from "@/notebook/notebook";
import type { Sprayer, Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { CatchTimer, type Countdown } from "@/parts/catch_timer";
import { ClearForm } from "@/parts/clear_form";
import { Choice, Pick, TextField } from "@/parts/fields";
import { Caution, Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, showDate, today, useWords } from "@/words/words";
import { AmountsEntry } from "../amounts_entry";
import { secondsOf, timeProblem, tipCount } from "../calibrate/calibration_form";
import { groundProblem } from "../checks";
import { calibrationsOf } from "../known";
import { ratingOf, type RuleChoice } from "./tip_request";
import { TipResultPart } from "./tip_result";

export interface TipForm {
  tips: string;
  entered: "volumes" | "flows";
  caught_unit: string;
  flow_unit: string;
  caught: string[];
  at: number;
  catch_time: string;
  countdown: Countdown | null;
  size: string;
  rated_flow: string;
  rated_pressure: string;
  pressure: string;
  rule: RuleChoice;
  acres_on_tips: string;
}

function firstForm(sprayer: Sprayer, units: Units): TipForm {
  return {
    tips: sprayer.tips === undefined ? "" : String(sprayer.tips),
    entered: "volumes",
    caught_unit: units === "us" ? "fl oz" : "mL",
    flow_unit: units === "us" ? "gal/min" : "L/min",
    caught: [],
    at: 0,
    catch_time: "30 s",
    countdown: null,
    size: sprayer.tip_size ?? "",
    rated_flow: sprayer.tip_rated_flow ?? "",
    rated_pressure: sprayer.tip_rated_pressure ?? "",
    pressure: sprayer.pressure ?? "",
    rule: "usual",
    acres_on_tips: "",
  };
}

/** Filled places only; each keeps its place in `places`. */
function askTips(form: TipForm, sprayer: Thing<"sprayer">): { asked: Asked<"tip-check">; places: number[] } {
  const places = form.caught.slice(0, tipCount(form.tips) ?? 0).flatMap((text, index) => (text.trim() === "" ? [] : [index]));
  const unit = form.entered === "flows" ? form.flow_unit : form.caught_unit;
  const amounts = places.map((index) => `${form.caught[index] ?? ""} ${unit}`);
  const last = calibrationsOf(sprayer.id)[0]?.fields.answer;
  const spacing = sprayer.fields.spacing;
  const asked = ask("tip-check", {
    ...(form.entered === "flows" ? { flows: amounts } : { volumes: amounts, catch_time: form.catch_time }),
    ...ratingOf(form, form.pressure),
    limit: form.rule === "usual" ? undefined : form.rule,
    ...(spacing && last?.speed ? { speed: last.speed, spacing } : {}),
  });
  return { asked, places };
}

export function TipPage({ sprayer }: { sprayer: Thing<"sprayer"> }): JSX.Element {
  const { sprayers, common } = useWords();
  const words = sprayers.tips;
  const { units } = useSettings();
  const { id, fields } = sprayer;
  const form = useForm<TipForm>(`tips/${id}`, firstForm(fields, units));
  const { value, set } = form;
  const saving = useSaving();
  const { asked, places } = askTips(value, sprayer);
  const count = tipCount(value.tips);
  // The core counts the tips it is given: one left out would shift the names of those behind it.
  const gap = places.findIndex((place, order) => place !== order);
  const acresWrong = groundProblem(value.acres_on_tips);
  const skipped = gap < 0 ? undefined : gap;
  const save = async () => {
    const body = {
      name: `${fields.name ?? ""}, ${showDate(today())}`,
      sprayer: id,
      operation: "tip-check" as const,
      request: { ...withoutBlanks(asked.request), units },
      answer: asked.answer,
      model,
      on: today(),
      acres_on_tips: value.acres_on_tips || undefined,
    };
    if (!(await saving.save([{ kind: "tip_set", subject: newId(), body }]))) return;
    form.clear();
    goInstead("sprayers", id);
  };
  return (
    <main class="calibrate">
      <PageHead title={say(words.title, fields.name ?? "")} back={address("sprayers", id)} />
      {form.resumed && <p class="resumed">{common.resumed}</p>}
      <Caution>
        <p>
          {sprayers.calibrate.begin.caution1} {sprayers.calibrate.begin.caution2}
        </p>
      </Caution>
      <p>{words.intro}</p>
      <TextField label={sprayers.form.tips} whole value={value.tips} error={value.tips !== "" && count === undefined ? sprayers.units.wholeNumber : undefined} onValue={(tips) => set({ tips })} />
      <RatingPart form={value} set={set} asked={asked} />
      <CaughtPart form={value} set={set} asked={asked} places={places} />
      {skipped === undefined ? <TipResultPart asked={asked} /> : <p class="not-reached">{say(words.gap, skipped + 1)}</p>}
      <AmountField label={sprayers.calibrate.result.acres} hint={sprayers.calibrate.result.acresHint} value={value.acres_on_tips} units={unitsOf.area} error={acresWrong} onValue={(acres_on_tips) => set({ acres_on_tips })} required={false} />
      <SaveBar saving={saving} label={words.save} disabled={asked.answer === undefined || skipped !== undefined || acresWrong !== undefined} onSave={() => void save()} />
      {form.resumed && <ClearForm onClear={form.clear} />}
    </main>
  );
}

interface PartProps {
  form: TipForm;
  set: (change: Partial<TipForm>) => void;
  asked: Asked<"tip-check">;
}

function RatingPart({ form, set, asked }: PartProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.tips;
  const problem = (field: "size" | "rated_flow" | "rated_pressure" | "pressure") => (asked.refusal?.field === field && form[field] !== "" ? asked.refusal.detail : undefined);
  const rules = (Object.keys(words.rules) as RuleChoice[]).map((value) => ({ value, label: words.rules[value] }));
  return (
    <Section title={words.rating}>
      <div class="two">
        <TextField label={sprayers.form.size} hint={sprayers.form.sizeHint} value={form.size} error={problem("size")} onValue={(size) => set({ size })} required={false} />
        <AmountField label={sprayers.calibrate.begin.pressure} value={form.pressure} units={unitsOf.pressure} error={problem("pressure")} onValue={(pressure) => set({ pressure })} required={false} />
        {form.size === "" && (
          <>
            <AmountField label={sprayers.form.rated} hint={words.ratedHint} value={form.rated_flow} units={unitsOf.flow} error={problem("rated_flow")} onValue={(rated_flow) => set({ rated_flow })} required={false} />
            <AmountField label={sprayers.form.ratedAt} value={form.rated_pressure} units={unitsOf.pressure} error={problem("rated_pressure")} onValue={(rated_pressure) => set({ rated_pressure })} required={false} />
          </>
        )}
      </div>
      <Pick label={words.rule} value={form.rule} options={rules} onValue={(rule) => set({ rule })} />
    </Section>
  );
}

function CaughtPart({ form, set, asked, places }: PartProps & { places: number[] }): JSX.Element | null {
  const { sprayers } = useWords();
  const { units } = useSettings();
  const count = tipCount(form.tips);
  if (count === undefined) return null;
  const byFlow = form.entered === "flows";
  const offered = (byFlow ? unitsOf.flow : unitsOf.caught)[units];
  const problem = (index: number): string | undefined => {
    const place = /^(?:flows|volumes)\[(\d+)\]/.exec(asked.refusal?.field ?? "")?.[1];
    return place !== undefined && places[Number(place)] === index ? asked.refusal?.detail : undefined;
  };
  const ways = [
    { value: "volumes" as const, label: sprayers.tips.asVolumes },
    { value: "flows" as const, label: sprayers.tips.asFlows },
  ];
  return (
    <Section title={sprayers.calibrate.catch.amounts}>
      <Choice label={sprayers.tips.entered} value={form.entered} options={ways} onValue={(entered) => set({ entered })} />
      {!byFlow && (
        <>
          <AmountField label={sprayers.tips.time} value={form.catch_time} units={unitsOf.time} error={timeProblem(form.catch_time)} onValue={(catch_time) => set({ catch_time, countdown: null })} />
          <CatchTimer seconds={secondsOf(form.catch_time)} countdown={form.countdown} onCountdown={(countdown) => set({ countdown })} />
        </>
      )}
      <AmountsEntry
        values={form.caught}
        count={count}
        at={form.at}
        unit={byFlow ? form.flow_unit : form.caught_unit}
        units={offered}
        onUnit={(unit) => set(byFlow ? { flow_unit: unit } : { caught_unit: unit })}
        label={(index) => say(sprayers.calibrate.catch.tip, index + 1)}
        nextLabel={sprayers.calibrate.catch.nextTip}
        problem={problem}
        onChange={(caught, at) => set({ caught, at })}
      />
    </Section>
  );
}
