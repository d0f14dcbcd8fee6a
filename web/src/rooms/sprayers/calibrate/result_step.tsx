// The answer: the number first, what could be wrong with it next, then what it means and the save button.
import type { JSX } from "preact";
import { address, goInstead } from "@/app/route";
import { settings } from "@/app/settings";
import { withoutBlanks } from "@/core/core";
import { measured, show, showNumber } from "@/core/quantity";
import { model } from "@/core/version";
import { newId } from "@/notebook/notebook";
import type { Draft } from "@/notebook/notebook";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, showDate, today, useWords } from "@/words/words";
import { groundProblem, pressureProblem } from "../checks";
import { TipBars } from "../tips/tip_bars";
import { tipsFromCatches } from "../tips/tip_request";
import type { CalibrationForm } from "./calibration_form";
import type { StepProps } from "./calibrate_page";
import { Compare } from "./compare";
import { ErrorBudget } from "./error_budget";
import { Repeats } from "./repeats";
import { StopBanner, mustRead, tokenOf } from "./stop_banner";
import { stepOf } from "./steps";

export function ResultStep(props: StepProps): JSX.Element {
  const { id, sprayer, form, set, asked, ground, clear } = props;
  const { sprayers } = useWords();
  const words = sprayers.calibrate.result;
  const saving = useSaving();
  const { answer } = asked;
  const serious = mustRead(asked.findings);
  const token = tokenOf(serious, answer?.output);
  const agreed = serious.length === 0 || form.agreed === token;
  const acresWrong = groundProblem(form.acres_on_tips);
  const pressureWrong = pressureProblem(form.pressure);
  const tips = tipsFromCatches(form, sprayer, ground);
  const save = async () => {
    if (!(await saving.save([draftOf(props)]))) return;
    clear();
    goInstead("sprayers", id);
  };
  return (
    <>
      <h2>{words.heading}</h2>
      {answer === undefined ? (
        <Missing {...props} />
      ) : (
        <>
          <StopBanner of={serious} output={answer.output} agreed={agreed} onAgreed={(yes) => set({ agreed: yes ? token : "" })} />
          <Output {...props} />
          <Findings of={asked.findings.filter((finding) => !serious.includes(finding))} />
          <Repeats {...props} />
          <ErrorBudget of={asked} />
          {tips?.answer && (
            <>
              <h3>{words.tips}</h3>
              <TipBars of={tips} />
            </>
          )}
        </>
      )}
      <Compare {...props} />
      <AmountField label={words.acres} hint={words.acresHint} value={form.acres_on_tips} units={unitsOf.area} error={acresWrong} onValue={(acres_on_tips) => set({ acres_on_tips })} required={false} />
      {pressureWrong && (
        <p class="error">
          {pressureWrong} <a href={address("sprayers", id, "calibrate", "begin")}>{say(sprayers.calibrate.goThere, sprayers.calibrate.steps.begin)}</a>
        </p>
      )}
      {answer !== undefined && !agreed && <p class="error">{words.ackNeeded}</p>}
      <SaveBar saving={saving} label={words.save} disabled={answer === undefined || !agreed || acresWrong !== undefined || pressureWrong !== undefined} onSave={() => void save()} />
    </>
  );
}

function Missing({ id, form, asked }: StepProps): JSX.Element {
  const { sprayers } = useWords();
  const words = sprayers.calibrate;
  const { refusal } = asked;
  const step = refusal === undefined ? "begin" : stepOf(refusal, form);
  return (
    <div class="still-needed">
      <p>
        <strong>{words.missing}. </strong>
        {refusal?.detail}
      </p>
      {step !== "result" && (
        <a class="button wide" href={address("sprayers", id, "calibrate", step)}>
          {say(words.goThere, words.steps[step])}
        </a>
      )}
    </div>
  );
}

function Output({ asked }: StepProps): JSX.Element | null {
  const { sprayers } = useWords();
  const words = sprayers.calibrate.result;
  const { answer } = asked;
  if (answer === undefined) return null;
  const spread = measured(answer.plus_minus);
  return (
    <div class="figures">
      <Figure
        size="main"
        label={answer.band_output ? words.band : words.output}
        of={asked}
        value={answer.output}
        note={spread && say(sprayers.plusMinus, `${showNumber(spread.value, 2)} ${spread.unit}`)}
      />
      <Figure label={words.field} of={asked} value={answer.field_output} />
      <Figure label={words.speed} of={asked} value={answer.speed} />
      <Figure label={words.flow} of={asked} value={answer.flow} />
      <Figure label={words.flowTip} of={asked} value={answer.flow_per_tip} />
      <Figure label={words.tank} of={asked} value={answer.tank_area} />
      <Figure label={words.pace} of={asked} value={answer.area_per_time} />
    </div>
  );
}

/** The entry: what was asked, in which units, and what came of it, with the version that answered. */
function draftOf({ id, sprayer, form, asked }: StepProps): Draft<"calibration"> {
  const { units } = settings.now();
  const output = asked.answer?.output;
  return {
    kind: "calibration",
    subject: newId(),
    body: {
      name: `${sprayer.name ?? ""}, ${showDate(today())}: ${show(output)}`,
      sprayer: id,
      operation: "calibrate",
      request: { ...withoutBlanks(asked.request), units },
      answer: asked.answer,
      model,
      on: today(),
      ...optional(form),
    },
  };
}

const optional = ({ pressure, acres_on_tips, operator }: CalibrationForm) => withoutBlanks({ pressure, acres_on_tips, operator });
