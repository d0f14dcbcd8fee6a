// All sprayers: what each puts out, how old that figure is, and how its tips stand.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { measured, showNumber, showUnit } from "@/core/quantity";
import { useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { Sign } from "@/parts/findings";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { say, today, useWords } from "@/words/words";
import { sayAge } from "./age";
import { dueOf } from "./due";
import { calibrationsOf, dayOf, tipChecksOf } from "./known";
import { tipState } from "./tip_state";

export function ListPage(): JSX.Element {
  const { sprayers } = useWords();
  const all = useThings("sprayer").slice().sort((a, b) => (a.fields.name ?? "").localeCompare(b.fields.name ?? ""));
  const active = all.filter(({ fields }) => fields.retired !== true);
  const retired = all.filter(({ fields }) => fields.retired === true);
  return (
    <main>
      <PageHead title={sprayers.title} />
      <ThingList empty={sprayers.empty}>
        {active.map((sprayer) => (
          <SprayerRow key={sprayer.id} sprayer={sprayer} />
        ))}
      </ThingList>
      <p class="row">
        <a class="button main" href={address("sprayers", "new")}>
          {sprayers.add}
        </a>
      </p>
      {retired.length > 0 && (
        <Section title={sprayers.retired}>
          <ThingList>
            {retired.map((sprayer) => (
              <SprayerRow key={sprayer.id} sprayer={sprayer} />
            ))}
          </ThingList>
        </Section>
      )}
    </main>
  );
}

function SprayerRow({ sprayer: { id, fields } }: { sprayer: Thing<"sprayer"> }): JSX.Element {
  const { sprayers } = useWords();
  const last = calibrationsOf(id)[0];
  const checked = tipChecksOf(id)[0];
  const day = last && dayOf(last);
  const due = dueOf(fields, day, today());
  const tips = checked && tipState(checked.fields.answer);
  return (
    <ThingRow
      href={address("sprayers", id)}
      title={fields.name ?? id}
      note={
        <>
          <span class="line">{sprayers.sorts[fields.sort] ?? sprayers.sortUnknown}</span>
          <span class="line">{day === undefined ? sprayers.neverCalibrated : say(sprayers.calibrated, sayAge(day, today()))}</span>
          {due && <Flag text={due === "age" ? sprayers.dueAge : sprayers.dueTips} />}
          {tips && (tips.good ? <span class="line">{tips.text}</span> : <Flag text={tips.text} />)}
        </>
      }
      end={<Output of={last} />}
    />
  );
}

function Output({ of }: { of: Thing<"calibration"> | undefined }): JSX.Element | null {
  const { common } = useWords();
  const output = measured(of?.fields.answer?.output);
  if (output === undefined) return null;
  return (
    <span class="output-end">
      <span class="output-number">{showNumber(output.value)}</span> {showUnit(output.unit)}
      {output.low !== undefined && output.high !== undefined && <small>{say(common.interval, showNumber(output.low), showNumber(output.high))}</small>}
    </span>
  );
}

export function Flag({ text }: { text: string }): JSX.Element {
  return (
    <span class="flag">
      <Sign severity="warning" />
      {text}
    </span>
  );
}
