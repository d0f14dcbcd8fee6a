// Cautions where the act begins, and the way of measuring.
import type { JSX } from "preact";
import type { CalibrationMethod, CatchCovers } from "@/core/operations.gen";
import { useThings } from "@/notebook/notebook";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice, Pick } from "@/parts/fields";
import { Caution } from "@/parts/list";
import { useWords } from "@/words/words";
import { pressureProblem } from "../checks";
import { isByHand } from "../sorts";
import { byTip } from "./calibration_form";
import type { StepProps } from "./calibrate_page";
import { TipCountField } from "./catch_step";

export function BeginStep(props: StepProps): JSX.Element {
  const { sprayer, form, set } = props;
  const { sprayers } = useWords();
  const words = sprayers.calibrate.begin;
  const byHand = isByHand(sprayer.sort);
  const ways: CalibrationMethod[] = byHand ? ["timed_plot", "course_and_catch", "refill"] : ["course_and_catch", "flow_and_speed", "refill"];
  const covers: CatchCovers[] = ["one_tip", "all_tips"];
  const operators = useThings("operator").map(({ id, fields }) => ({ value: id, label: fields.name ?? id }));
  return (
    <>
      <Caution>
        <h2>{words.heading}</h2>
        <ul class="cautions">
          <li>{words.caution1}</li>
          <li>{words.caution2}</li>
          <li>{words.caution3}</li>
        </ul>
      </Caution>
      <div class="full-choices">
        <Choice label={words.way} value={form.way} options={ways.map((value) => ({ value, label: words.ways[value], hint: words.wayHints[value] }))} onValue={(way) => set({ way })} />
      </div>
      {!byHand && form.way !== "refill" && (
        <div class="full-choices"><Choice
          label={words.covers}
          value={form.covers}
          options={covers.map((value) => ({ value, label: words.coversOptions[value], hint: words.coversHints[value] }))}
          onValue={(chosen) => set({ covers: chosen, caught: [], at: 0, rounds: 1 })}
        /></div>
      )}
      {byTip(form, sprayer.sort) && form.way !== "refill" && <TipCountField {...props} />}
      <AmountField label={words.pressure} hint={words.pressureHint} value={form.pressure} units={unitsOf.pressure} error={pressureProblem(form.pressure)} onValue={(pressure) => set({ pressure })} required={false} />
      {operators.length > 0 && <Pick label={words.operator} value={form.operator} options={operators} onValue={(operator) => set({ operator })} required={false} />}
    </>
  );
}
