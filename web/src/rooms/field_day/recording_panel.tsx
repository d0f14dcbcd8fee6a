// A pass while it is recorded: on or off, time, what the ground and the tank should be by now, gaps.
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { address } from "@/app/route";
import { show } from "@/core/quantity";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { Outline, type Line } from "@/parts/outline";
import { things } from "@/notebook/notebook";
import { partsOf, type Fix, type Gap } from "@/positions/fixes";
import { PositionState, useSeconds } from "@/positions/position_state";
import type { Recording } from "@/positions/recorder";
import { count, say, showTime, useWords } from "@/words/words";
import { askSwept, mixLeft, passDone, passesOf, passesOfTrack } from "./day_data";

interface Props {
  job: Thing<"job">;
  of: Recording;
  width: string;
  onWidth: (width: string) => void;
}

/** "1:02:07". */
export function clock(milliseconds: number): string {
  const seconds = Math.max(0, Math.floor(milliseconds / 1000));
  const two = (number: number) => String(number).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  return `${hours > 0 ? `${hours}:` : ""}${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

// Thick where it was sprayed, thin where it was driven, nothing over a gap.
function linesOf(fixes: Fix[]): Line[] {
  const lines: Line[] = [];
  for (const part of partsOf(fixes)) {
    let line: Line | undefined;
    for (const [index, fix] of part.entries()) {
      const style = fix.on ? "sprayed" : "driven";
      const point = [fix.lon, fix.lat];
      line?.points.push(point);
      if (line?.style !== style && index < part.length - 1) lines.push((line = { points: [point], style }));
    }
  }
  return lines.filter(({ points }) => points.length > 1);
}

export function RecordingPanel({ job, of, width, onWidth }: Props): JSX.Element {
  const { fieldDay } = useWords();
  const now = useSeconds();
  const { head, fixes } = of;
  const here = fixes.at(-1);
  const stand = things("stand").find(({ id }) => id === job.fields.stand)?.fields;
  // A long track is weighed again every third second at most.
  const beat = Math.floor(now / 3000);
  const done = passesOf(job.id).flatMap(passDone);
  const swept = useMemo(() => (width === "" ? undefined : askSwept(job.fields, [...done, ...passesOfTrack(fixes, width)])), [beat, width, head.id]);
  const left = mixLeft(job.fields, job.id, swept?.answer?.swept_area);
  const drawing = useMemo(
    () => <Outline label={job.fields.name} ground={stand?.boundary} lines={linesOf(fixes)} here={here && [here.lon, here.lat]} />,
    [fixes.length, head.id, stand],
  );
  return (
    <section class="recording">
      <p class={head.on && of.running ? "spray-state on" : "spray-state"} role="status">
        <strong>{!of.running ? fieldDay.notRecorded : head.on ? fieldDay.on : fieldDay.off}</strong>
        <span class="spray-clock">{clock(now - head.begun)}</span>
        <small>{say(fieldDay.passBegun, showTime(new Date(head.begun).toISOString()))}</small>
      </p>
      <PositionState of={of} />
      {head.gaps.length > 0 && <Gaps gaps={head.gaps} begun={head.begun} />}
      {width === "" && (
        <>
          <p class="refusal">{fieldDay.noWidth}</p>
          <AmountField label={fieldDay.width} value={width} units={unitsOf.length} onValue={onWidth} />
        </>
      )}
      {swept?.answer && (
        <div class="figures">
          <Figure size="main" label={fieldDay.swept} of={swept} value={swept.answer.swept_area} note={swept.answer.planned_area && say(fieldDay.sweptOf, show(swept.answer.planned_area))} />
          <Figure label={fieldDay.speed} of={swept} value={swept.answer.mean_speed} />
          <Figure label={fieldDay.time} of={swept} value={swept.answer.spray_time} />
          <Figure label={fieldDay.mixUsed} of={left.used} value={left.used?.answer?.mix?.expected} />
          {left.left !== undefined && (
            <div class="figure plain">
              <p class="figure-press">
                <span class="figure-label">{fieldDay.tankLeft}</span>
                <span class="figure-value">{show(left.left)}</span>
              </p>
            </div>
          )}
          {(left.used?.answer?.products ?? []).map((product) => (
            <Figure key={product.name} size="small" label={product.name ?? ""} of={left.used} value={product.expected ?? product.expected_weight} />
          ))}
        </div>
      )}
      {left.short && <p class="refusal">{fieldDay.tankShort}</p>}
      {drawing}
      <p class="hint">{fieldDay.lossNote}</p>
      <a class="button wide" href={address("field-day", job.id, "hand")}>
        {fieldDay.hand}
      </a>
    </section>
  );
}

function Gaps({ gaps, begun }: { gaps: Gap[]; begun: number }): JSX.Element {
  const { fieldDay } = useWords();
  const at = (seconds: number) => new Date(begun + seconds * 1000).toTimeString().slice(0, 8);
  const last = gaps.at(-1);
  return (
    <div class="refusal" role="alert">
      <p>
        <strong>{last && count(gaps.length, { one: say(fieldDay.gaps.one, "{0}", lengthOf(last, fieldDay.seconds)), many: say(fieldDay.gaps.many, "{0}", lengthOf(last, fieldDay.seconds)) })}</strong>
        {gaps.slice(-3).map((gap, index) => (
          <small key={index}>{say(fieldDay.gapLine, at(gap.from_seconds), at(gap.to_seconds), fieldDay.gapWhy[gap.why])}</small>
        ))}
      </p>
    </div>
  );
}

const lengthOf = ({ from_seconds, to_seconds }: Gap, words: string): string => say(words, Math.round(to_seconds - from_seconds));
