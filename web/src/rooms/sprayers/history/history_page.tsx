// Everything measured on one sprayer, newest first, and how its tips wear.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { show } from "@/core/quantity";
import { useNotebook } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { say, showDate, useWords } from "@/words/words";
import { calibrationsOf, dayOf, tipChecksOf } from "../known";
import { tipState } from "../tip_state";
import { askWear, pointsOf } from "./wear_points";
import { WearPart } from "./wear_part";

export function HistoryPage({ sprayer }: { sprayer: Thing<"sprayer"> }): JSX.Element {
  useNotebook();
  const words = useWords().sprayers.history;
  const { id, fields } = sprayer;
  const all = [...calibrationsOf(id), ...tipChecksOf(id)].sort((a, b) => dayOf(b).localeCompare(dayOf(a)) || b.created.localeCompare(a.created));
  const points = pointsOf(fields, all);
  return (
    <main>
      <PageHead title={say(words.title, fields.name ?? "")} back={address("sprayers", id)} />
      <Section title={words.trend}>
        <p>{words.trendIntro}</p>
        {fields.tips_since && <p class="hint">{say(words.sinceTips, showDate(fields.tips_since))}</p>}
        <WearPart of={points.length > 0 ? askWear(fields, points) : undefined} />
      </Section>
      <Section title={words.all}>
        <ThingList empty={words.empty}>{all.map((entry) => (
          <EntryRow key={entry.id} sprayer={id} entry={entry} />
        ))}</ThingList>
      </Section>
    </main>
  );
}

function EntryRow({ sprayer, entry }: { sprayer: string; entry: Thing<"calibration"> | Thing<"tip_set"> }): JSX.Element {
  const words = useWords().sprayers.history;
  const { fields } = entry;
  const isCheck = fields.operation === "tip-check";
  const end = isCheck ? show(fields.answer?.mean) : show(fields.answer?.output);
  const acres = fields.acres_on_tips ? ` · ${fields.acres_on_tips}` : "";
  const note = isCheck ? `${tipState(fields.answer).text}${acres}` : `${show(fields.answer?.speed)}${acres}`;
  return <ThingRow href={address("sprayers", sprayer, "history", entry.id)} title={`${isCheck ? words.tipCheck : words.calibration}, ${showDate(dayOf(entry))}`} note={note} end={end} />;
}
