// One sprayer: the last figure first, then what to do.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { show, measured, showNumber } from "@/core/quantity";
import { openFormNames } from "@/notebook/forms";
import { useNotebook } from "@/notebook/notebook";
import type { Sprayer, Thing } from "@/notebook/things";
import { Figure } from "@/parts/answer";
import { Section } from "@/parts/list";
import { useSaving } from "@/parts/save_bar";
import { say, showDate, today, useWords } from "@/words/words";
import { sayDay } from "./age";
import { dueOf, usualDays } from "./due";
import { askedOf, calibrationsOf, dayOf, tipChecksOf } from "./known";
import { Flag } from "./list_page";
import { tipState } from "./tip_state";

interface Props {
  sprayer: Thing<"sprayer">;
}

export function SprayerPage({ sprayer }: Props): JSX.Element {
  useNotebook();
  const { sprayers } = useWords();
  const { id, fields } = sprayer;
  const halfDone = openFormNames().includes(`calibrate/${id}`);
  return (
    <main>
      <PageHead title={fields.name ?? id} back={address("sprayers")} />
      <p class="sort-line">
        {sprayers.sorts[fields.sort] ?? sprayers.sortUnknown}
        {fields.retired && ` · ${sprayers.page.retiredNote}`}
      </p>
      {halfDone && <p class="resumed">{sprayers.page.resume}</p>}
      <LastCalibration sprayer={sprayer} />
      <nav class="sprayer-acts" aria-label={fields.name}>
        <a class="button main" href={address("sprayers", id, "calibrate")}>
          {sprayers.page.calibrate}
        </a>
        <a class="button" href={address("sprayers", id, "tips")}>
          {sprayers.page.tips}
        </a>
        <a class="button" href={address("sprayers", id, "target")}>
          {sprayers.page.target}
        </a>
        <a class="button" href={address("sprayers", id, "history")}>
          {sprayers.page.history}
        </a>
      </nav>
      <Tips sprayer={sprayer} />
      <Details sprayer={sprayer} />
    </main>
  );
}

function LastCalibration({ sprayer: { id, fields } }: Props): JSX.Element {
  const { sprayers } = useWords();
  const last = calibrationsOf(id)[0];
  const of = askedOf<"calibrate">(last?.fields);
  if (last === undefined || of?.answer === undefined) {
    return (
      <Section title={sprayers.page.last}>
        <p class="empty">{sprayers.page.none}</p>
      </Section>
    );
  }
  const day = dayOf(last);
  const due = dueOf(fields, day, today());
  const { output, speed, flow, tank_area: tank, plus_minus: spread, band_output: band, field_output: field } = of.answer;
  const age = `${sayDay(day, today())}${last.fields.pressure ? `, ${say(sprayers.page.atPressure, last.fields.pressure)}` : ""}`;
  return (
    <Section title={sprayers.page.last}>
      {due === "age" && <p><Flag text={say(sprayers.dueAgeWhy, fields.calibrate_after_days ?? usualDays)} /></p>}
      {due === "tips" && <p><Flag text={sprayers.dueTipsWhy} /></p>}
      <div class="figures">
        <Figure size="main" label={band ? sprayers.calibrate.result.band : sprayers.calibrate.result.output} of={of} value={output} note={`${measured(spread) ? `${say(sprayers.plusMinus, `${showNumber(measured(spread)?.value ?? 0, 2)} %`)}; ` : ""}${age}`} />
        <Figure label={sprayers.calibrate.result.field} of={of} value={field} />
        <Figure label={sprayers.calibrate.result.speed} of={of} value={speed} />
        <Figure label={sprayers.calibrate.result.flow} of={of} value={flow} />
        <Figure label={sprayers.calibrate.result.tank} of={of} value={tank} />
      </div>
    </Section>
  );
}

function Tips({ sprayer: { id, fields } }: Props): JSX.Element {
  const { sprayers, common } = useWords();
  const saving = useSaving();
  const checked = tipChecksOf(id)[0];
  const state = tipState(checked?.fields.answer);
  const isNew = fields.tips_since === today();
  const [before, setBefore] = useState<string | null>();
  const putIn = (day: string | null) => saving.save([{ kind: "sprayer", subject: id, body: { tips_since: day } }]);
  const noteNew = async () => {
    const was = fields.tips_since ?? null;
    if (await putIn(today())) setBefore(was);
  };
  return (
    <Section title={sprayers.page.tipState}>
      <p>{state.good || checked === undefined ? state.text : <Flag text={state.text} />}</p>
      {checked && <p class="hint">{say(sprayers.page.tipChecked, sayDay(dayOf(checked), today()))}</p>}
      {isNew ? (
        <>
          <p role="status">{sprayers.page.newTipsDone}</p>
          {before !== undefined && (
            <button type="button" class="button" disabled={saving.busy} onClick={() => void putIn(before).then((done) => done && setBefore(undefined))}>
              {common.undo}
            </button>
          )}
        </>
      ) : (
        <button type="button" class="button" disabled={saving.busy} onClick={() => void noteNew()}>
          {sprayers.page.newTips}
        </button>
      )}
      {saving.trouble}
    </Section>
  );
}

function Details({ sprayer: { id, fields } }: Props): JSX.Element {
  const { sprayers } = useWords();
  const saving = useSaving();
  const retired = fields.retired === true;
  return (
    <Section title={sprayers.page.details}>
      <dl class="values">
        {detailLines(fields, sprayers.form).map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div class="row">
        <a class="button" href={address("sprayers", id, "change")}>
          {sprayers.page.change}
        </a>
        <button type="button" class="button" disabled={saving.busy} onClick={() => void saving.save([{ kind: "sprayer", subject: id, body: { retired: !retired } }])}>
          {retired ? sprayers.page.unretire : sprayers.page.retire}
        </button>
      </div>
      {saving.trouble}
    </Section>
  );
}

type FormWords = ReturnType<typeof useWords>["sprayers"]["form"];

function detailLines(fields: Sprayer, words: FormWords): Array<[string, string]> {
  const lines: Array<[string, string | number | undefined]> = [
    [words.width, fields.width],
    [words.wetted, fields.wetted_width],
    [words.band, fields.band_width],
    [words.rows, fields.row_spacing],
    [fields.sort === "band" ? words.tipsBand : words.tips, fields.tips],
    [words.spacing, fields.spacing],
    [words.tipWords, fields.tip_words],
    [words.size, fields.tip_size],
    [words.rated, fields.tip_rated_flow && [show(fields.tip_rated_flow), fields.tip_rated_pressure].filter(Boolean).join(", ")],
    [words.since, fields.tips_since && showDate(fields.tips_since)],
    [words.pressure, fields.pressure],
    [words.tank, fields.tank],
    [words.trapped, fields.trapped],
    [words.notes, fields.notes],
  ];
  return lines.flatMap(([label, value]) => (value === undefined || value === null || value === "" ? [] : [[label, String(value)] as [string, string]]));
}
