// One calibration or tip check as it was saved: its numbers are those of that day.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThing } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { say, showDate, useWords } from "@/words/words";
import { ErrorBudget } from "../calibrate/error_budget";
import { askedOf, dayOf } from "../known";
import { TipResultPart } from "../tips/tip_result";

interface Props {
  sprayer: Thing<"sprayer">;
  entry: string;
}

export function EntryPage({ sprayer, entry }: Props): JSX.Element {
  const { sprayers, common } = useWords();
  const calibration = useThing("calibration", entry);
  const check = useThing("tip_set", entry);
  const found = calibration ?? check;
  const words = sprayers.history;
  return (
    <main>
      <PageHead title={found ? `${check ? words.tipCheck : words.calibration}, ${showDate(dayOf(found))}` : say(words.title, sprayer.fields.name ?? "")} back={address("sprayers", sprayer.id, "history")} />
      {found === undefined ? (
        <p class="empty">{common.notFound}</p>
      ) : (
        <p class="hint">
          {words.asSaved} {say(words.model, found.fields.model ?? "?")}, {say(words.by, found.author)}.
        </p>
      )}
      {calibration && <Kept of={calibration} />}
      {check && <KeptCheck of={check} />}
    </main>
  );
}

function Kept({ of: { fields } }: { of: Thing<"calibration"> }): JSX.Element | null {
  const words = useWords().sprayers.calibrate.result;
  const of = askedOf<"calibrate">(fields);
  if (of?.answer === undefined) return null;
  const { answer } = of;
  return (
    <>
      <div class="figures">
        <Figure size="main" label={answer.band_output ? words.band : words.output} of={of} value={answer.output} />
        <Figure label={words.field} of={of} value={answer.field_output} />
        <Figure label={words.speed} of={of} value={answer.speed} />
        <Figure label={words.flow} of={of} value={answer.flow} />
        <Figure label={words.flowTip} of={of} value={answer.flow_per_tip} />
        <Figure label={words.tank} of={of} value={answer.tank_area} />
        <Figure label={words.stickerDelivered} of={of} value={answer.assumed?.delivered} />
        <Figure label={words.believedDelivered} of={of} value={answer.believed?.delivered} />
      </div>
      <Findings of={of.findings} />
      <ErrorBudget of={of} />
    </>
  );
}

function KeptCheck({ of: { fields } }: { of: Thing<"tip_set"> }): JSX.Element | null {
  const of = askedOf<"tip-check">(fields);
  return of?.answer === undefined ? null : <TipResultPart asked={of} />;
}
