// The weather as it is now, with the board beside it while the figures are typed.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import type { InversionCue, SprayWindowRequest } from "@/core/operations.gen";
import { model } from "@/core/version";
import { useForm } from "@/notebook/forms";
import { newId } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { TextField, Tick } from "@/parts/fields";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { ago, instant, say, showTime, today, useWords } from "@/words/words";
import { Board, Checks, verdictOf } from "./board";
import { Compass, type Point } from "./compass";
import { askWindow, underWay } from "./day_data";

interface ReadingForm {
  wind: string;
  gust: string;
  from: Point | "";
  temperature: string;
  humidity: string;
  cues: InversionCue[];
  rain: string;
  typed: string;
}
const empty: ReadingForm = { wind: "", gust: "", from: "", temperature: "", humidity: "", cues: [], rain: "", typed: "" };
const cues: InversionCue[] = ["none_seen", "still_air", "smoke_or_dust_hangs", "fog_or_dew", "clear_calm_dusk_to_dawn", "clouds_dying_out", "cold_air_pools"];

// Today at that time, with this place's offset.
const rainAt = (time: string): string => (/^\d\d:\d\d$/.test(time) ? instant(new Date(`${today()}T${time}:00`)) : "");

export function ReadingPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { fieldDay } = useWords();
  const form = useForm<ReadingForm>(`reading/${job.id}`, empty);
  const saving = useSaving();
  const { wind, gust, from, temperature, humidity, cues: seen, rain, typed } = form.value;
  const set = (change: Partial<ReadingForm>) => form.set({ typed: typed || instant(), ...change });
  const reading = (taken: string): SprayWindowRequest["readings"][number] => ({ taken, wind, gust, wind_from: from, temperature, humidity, cues: seen });
  const now = instant();
  const asked = wind === "" ? undefined : askWindow(reading(now), job.fields, rainAt(rain), now);
  const field = asked?.refusal?.field ?? "";
  const wrong = (name: string) => (field === `readings[0].${name}` ? asked?.refusal?.detail : undefined);
  const tick = (cue: InversionCue, on: boolean) => {
    const others = seen.filter((one) => one !== cue && (cue === "none_seen" ? false : one !== "none_seen" || !on));
    set({ cues: on ? [...others, cue] : others });
  };
  const save = async () => {
    const taken = instant();
    const judged = askWindow(reading(taken), job.fields, rainAt(rain), taken);
    if (judged.answer === undefined) return;
    const body = {
      name: `${job.fields.name}, ${showTime(taken)}`,
      operation: "spray-window" as const,
      request: judged.request,
      answer: judged.answer,
      model,
      job: job.id,
      taken,
      verdict: judged.answer.verdict,
    };
    if (!(await saving.save([{ kind: "reading", subject: newId(), body }, ...underWay(job)]))) return;
    form.clear();
    goInstead("field-day", job.id);
  };
  const isOld = typed !== "" && Date.now() - Date.parse(typed) > 10 * 60_000;
  return (
    <main>
      <PageHead title={fieldDay.read} back={address("field-day", job.id)} />
      {isOld && <p class="refusal">{say(fieldDay.typedBefore, ago(typed))}</p>}
      <div class="two">
        <AmountField label={fieldDay.wind} value={wind} units={unitsOf.wind} error={wrong("wind")} onValue={(text) => set({ wind: text })} />
        <AmountField label={fieldDay.gust} value={gust} units={unitsOf.wind} required={false} error={wrong("gust")} onValue={(text) => set({ gust: text })} />
      </div>
      <Compass value={from} onValue={(point) => set({ from: point })} error={wrong("wind_from")} />
      <div class="two">
        <AmountField label={fieldDay.temperature} value={temperature} units={unitsOf.temperature} error={wrong("temperature")} onValue={(text) => set({ temperature: text })} />
        <AmountField label={fieldDay.humidity} value={humidity} units={unitsOf.percent} error={wrong("humidity")} onValue={(text) => set({ humidity: text })} />
      </div>
      <fieldset class="field">
        <legend>{fieldDay.cues}</legend>
        <p class="hint">{fieldDay.cuesHint}</p>
        {cues.map((cue) => (
          <Tick key={cue} label={fieldDay.cue[cue]} checked={seen.includes(cue)} onValue={(on) => tick(cue, on)} />
        ))}
      </fieldset>
      <TextField label={fieldDay.rain} hint={fieldDay.rainHint} required={false} type="time" value={rain} onValue={(text) => set({ rain: text })} />
      {asked?.answer && <Board verdict={verdictOf(asked)} lines={[asked.answer.text ?? ""]} />}
      {asked && <Checks of={asked} />}
      <SaveBar saving={saving} onSave={() => void save()} disabled={asked?.answer === undefined} label={fieldDay.saveReading} />
    </main>
  );
}
