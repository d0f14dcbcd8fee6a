// A known area sprayed, and the water that fills the tank to its mark again.
import type { JSX } from "preact";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { useWords } from "@/words/words";
import type { StepProps } from "./calibrate_page";
import { problemAt } from "./steps";

export function RefillStep({ form, set, asked }: StepProps): JSX.Element {
  const words = useWords().sprayers.calibrate.refill;
  return (
    <>
      <h2>{words.heading}</h2>
      <p>{words.how}</p>
      <AmountField label={words.refill} value={form.refill} units={unitsOf.tank} error={problemAt(asked.refusal, form, "refill")} onValue={(refill) => set({ refill })} />
      <AmountField label={words.tank} hint={words.tankHint} value={form.tank} units={unitsOf.tank} error={problemAt(asked.refusal, form, "tank")} onValue={(tank) => set({ tank })} required={false} />
    </>
  );
}
