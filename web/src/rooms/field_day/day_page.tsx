// One page for the day: go or stop above, what is recorded, what happened; the acts under the thumb.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import type { Asked } from "@/core/core";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { useNotebook, WriteError } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { useSaving } from "@/parts/save_bar";
import { wakeSound } from "@/parts/signals";
import { useSeconds } from "@/positions/position_state";
import { forget, go, halt, setOn, useRecording, type Recording } from "@/positions/recorder";
import { ago, instant, say, showTime, useWords } from "@/words/words";
import { Board, Checks, verdictOf } from "./board";
import { askWindow, openLoad, readingsOf, widthOf } from "./day_data";
import { beginPass, endPass } from "./pass_acts";
import { RecordingPanel } from "./recording_panel";
import { Timeline } from "./timeline";

export function DayPage({ job }: { job: Thing<"job"> }): JSX.Element {
  useNotebook();
  const { fieldDay } = useWords();
  const found = useRecording();
  const mine = found?.head.use === "pass" && found.head.subject === job.id ? found : undefined;
  const form = useForm(`width/${job.id}`, { width: "" });
  const width = form.value.width || widthOf(job.fields);
  const inTank = openLoad(job.id);
  return (
    <main class="day">
      <PageHead title={job.fields.name} back={address("field-day")} />
      <Weather job={job} />
      {mine && <RecordingPanel job={job} of={mine} width={width} onWidth={(text) => form.set({ width: text })} />}
      {inTank && (
        <p class="in-tank">
          <strong>{say(fieldDay.inTank, inTank.fields.number)}</strong> {inTank.fields.mix}
        </p>
      )}
      <Timeline job={job.id} />
      {job.fields.work !== "broadcast" && (
        <a class="button wide" href={address("jobs", job.id, "plan")}>
          <span>
            {fieldDay.tally}
            <small>{fieldDay.tallyHint}</small>
          </span>
        </a>
      )}
      <div class="row">
        {!mine && (
          <a class="button" href={address("field-day", job.id, "hand")}>
            {fieldDay.hand}
          </a>
        )}
        {mine && (
          <>
            <a class="button" href={address("field-day", job.id, "load")}>
              {inTank ? fieldDay.endLoad : fieldDay.load}
            </a>
            <a class="button" href={address("field-day", job.id, "note")}>
              {fieldDay.note}
            </a>
          </>
        )}
        <a class="button" href={address("field-day", job.id, "close")}>
          {fieldDay.close}
        </a>
      </div>
      <Acts job={job} found={found} mine={mine} width={width} />
    </main>
  );
}

/** The newest reading of the job, judged at this moment. */
function judged(job: Thing<"job">): Asked<"spray-window"> | undefined {
  const { readings, rain_expected } = (readingsOf(job.id)[0]?.fields.request ?? {}) as { readings?: Parameters<typeof askWindow>[0][]; rain_expected?: string };
  const kept = readings?.[0];
  return kept && askWindow(kept, job.fields, rain_expected, instant());
}

function Weather({ job }: { job: Thing<"job"> }): JSX.Element {
  const { fieldDay } = useWords();
  useSeconds();
  const reading = readingsOf(job.id)[0]?.fields;
  if (reading === undefined) return <Board verdict="none" lines={[fieldDay.verdictNone]} />;
  const asked = judged(job);
  const verdict = verdictOf(asked);
  const answer = asked?.answer;
  const taken = say(fieldDay.taken, ago(reading.taken));
  const until = answer?.readings_good_until && verdict !== "old" ? say(fieldDay.goodUntil, showTime(answer.readings_good_until)) : "";
  const from = answer?.mean_wind_from_word && fieldDay.pointShort[answer.mean_wind_from_word as "N"];
  const speed = show(answer?.highest_wind);
  const wind = from ? say(fieldDay.windFrom, speed, from) : say(fieldDay.windOnly, speed);
  const first = verdict === "old" ? fieldDay.verdictOld : verdict === "go" ? fieldDay.verdictGo : (worst(answer?.checks) ?? answer?.text ?? "");
  return (
    <>
      <Board verdict={verdict} lines={[first, [taken, until].filter(Boolean).join(", "), verdict === "old" || !speed ? "" : wind]} />
      {asked && (
        <details class="row-by-row" open={verdict === "stop" ? true : undefined}>
          <summary>{fieldDay.checkRows}</summary>
          <Checks of={asked} />
        </details>
      )}
    </>
  );
}

const worst = (checks: Array<{ verdict?: string; text?: string }> | undefined): string | undefined =>
  (checks?.find(({ verdict }) => verdict === "stop") ?? checks?.find(({ verdict }) => verdict === "not_known"))?.text;

interface ActsProps {
  job: Thing<"job">;
  found: Recording | undefined;
  mine: Recording | undefined;
  width: string;
}

/** Always at the thumb, in the lower half. */
function Acts({ job, found, mine, width }: ActsProps): JSX.Element {
  const { fieldDay, common } = useWords();
  const saving = useSaving();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  useSeconds();
  const verdict = verdictOf(judged(job));
  // One act at a time: a double press in a glove is one press.
  const run = (act: () => Promise<unknown>) => {
    if (busy) return;
    setBusy(true);
    setProblem(undefined);
    act()
      .catch((error: unknown) => setProblem(error instanceof WriteError && error.reason === "full" ? common.full : say(common.writeFailed, error instanceof Error ? error.message : String(error))))
      .finally(() => setBusy(false));
  };
  const start = () => {
    wakeSound();
    run(() => beginPass(job, width, saving.save));
  };
  return (
    <div class="save-bar day-acts">
      {saving.trouble}
      {problem && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
      {found !== undefined && mine === undefined && <p class="refusal">{fieldDay.noRecording}</p>}
      {mine && !mine.running && <Held of={mine} onThrow={() => run(async () => (await halt(), await forget()))} />}
      <div class="day-grid">
        {mine ? (
          <>
            {mine.running && (
              <button type="button" class={mine.head.on ? "button stop giant" : "button go giant"} onClick={() => run(() => setOn(!mine.head.on))}>
                <span>
                  {mine.head.on ? fieldDay.turnOff : fieldDay.turnOn}
                  <small>{mine.head.on ? fieldDay.nowOn : fieldDay.nowOff}</small>
                </span>
              </button>
            )}
            <button type="button" class="button act" disabled={busy || saving.busy} onClick={() => run(() => endPass(job, width, saving.save))}>
              {fieldDay.endPass}
            </button>
            <a class="button act" href={address("field-day", job.id, "reading")}>
              {fieldDay.takeReading}
            </a>
          </>
        ) : (
          <>
            <button type="button" class={verdict === "go" ? "button go act" : "button act"} disabled={busy || saving.busy || found !== undefined} onClick={() => start()}>
              <span>
                {fieldDay.start}
                {verdict !== "go" && <small>{say(fieldDay.boardSays, fieldDay.verdict[verdict])}</small>}
              </span>
            </button>
            <a class={verdict === "go" ? "button act" : "button main act"} href={address("field-day", job.id, "reading")}>
              {fieldDay.takeReading}
            </a>
            <a class="button act" href={address("field-day", job.id, "load")}>
              {openLoad(job.id) ? fieldDay.endLoad : fieldDay.load}
            </a>
            <a class="button act" href={address("field-day", job.id, "note")}>
              {fieldDay.note}
            </a>
          </>
        )}
      </div>
    </div>
  );
}

// After a long break nobody knows whether the spray is still on: the person says so.
function Held({ of, onThrow }: { of: Recording; onThrow: () => void }): JSX.Element {
  const { fieldDay } = useWords();
  const last = of.last ?? of.head.begun;
  const goOn = async (on: boolean) => {
    await setOn(on);
    go();
  };
  return (
    <div class="held">
      <p class="refusal">{say(fieldDay.held, showTime(new Date(last).toISOString()))}</p>
      <div class="day-grid">
        <button type="button" class="button go act" onClick={() => void goOn(true)}>
          {fieldDay.heldOn}
        </button>
        <button type="button" class="button act" onClick={() => void goOn(false)}>
          {fieldDay.heldOff}
        </button>
      </div>
      {of.fixes.length === 0 && (
        <button type="button" class="button quiet" onClick={onThrow}>
          {fieldDay.throwAway}
        </button>
      )}
    </div>
  );
}
