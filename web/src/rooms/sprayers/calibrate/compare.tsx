// Against a sticker, a figure believed so far, or a sum done by hand.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure } from "@/parts/answer";
import { useWords } from "@/words/words";
import type { StepProps } from "./calibrate_page";
import { problemAt } from "./steps";

export function Compare(props: StepProps): JSX.Element {
  const { form } = props;
  const words = useWords().sprayers.calibrate.result;
  const [open, setOpen] = useState(() => [form.believed, form.assumed_width, form.assumed_speed, form.hand].some((text) => text !== ""));
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.compare}</summary>
      <Sticker {...props} />
      <Hand {...props} />
    </details>
  );
}

/** Whether no remark above says the same already. */
const isNews = (text: string | undefined, { findings }: StepProps["asked"]): boolean => text !== undefined && !findings.some((finding) => finding.text.includes(text));

function Sticker({ form, set, asked }: StepProps): JSX.Element {
  const words = useWords().sprayers.calibrate.result;
  const problem = (field: keyof typeof form) => problemAt(asked.refusal, form, field);
  const { believed, assumed } = asked.answer ?? {};
  return (
    <>
      <AmountField label={words.believed} value={form.believed} units={unitsOf.mixPerArea} error={problem("believed")} onValue={(figure) => set({ believed: figure })} required={false} />
      {believed && (
        <>
          <Figure label={words.believedDelivered} of={asked} value={believed.delivered} />
          {isNews(believed.text, asked) && <p>{believed.text}</p>}
        </>
      )}
      <div class="two">
        <AmountField label={words.assumedWidth} value={form.assumed_width} units={unitsOf.length} error={problem("assumed_width")} onValue={(assumed_width) => set({ assumed_width })} required={false} />
        <AmountField label={words.assumedSpeed} value={form.assumed_speed} units={unitsOf.speed} error={problem("assumed_speed")} onValue={(assumed_speed) => set({ assumed_speed })} required={false} />
      </div>
      {assumed && (
        <>
          <div class="figures">
            <Figure label={words.stickerOutput} of={asked} value={assumed.output} />
            <Figure label={words.stickerDelivered} of={asked} value={assumed.delivered} />
          </div>
          {isNews(assumed.text, asked) && <p>{assumed.text}</p>}
        </>
      )}
    </>
  );
}

function Hand({ form, set, asked }: StepProps): JSX.Element {
  const words = useWords().sprayers.calibrate.result;
  const problem = (field: keyof typeof form) => problemAt(asked.refusal, form, field);
  const { hand } = asked.answer ?? {};
  return (
    <>
      <AmountField label={words.hand} hint={words.handHint} value={form.hand} units={unitsOf.mixPerArea} error={problem("hand")} onValue={(figure) => set({ hand: figure })} required={false} />
      {form.hand !== "" && (
        <div class="two">
          <AmountField label={words.handSpeed} value={form.hand_speed} units={unitsOf.speed} error={problem("hand_speed")} onValue={(hand_speed) => set({ hand_speed })} required={false} />
          <AmountField label={words.handFlow} value={form.hand_flow} units={unitsOf.flow} error={problem("hand_flow")} onValue={(hand_flow) => set({ hand_flow })} required={false} />
          <AmountField label={words.handWidth} value={form.hand_width} units={unitsOf.length} error={problem("hand_width")} onValue={(hand_width) => set({ hand_width })} required={false} />
        </div>
      )}
      {hand && (
        <div class={hand.verdict === "slip" ? "hand-verdict slip" : "hand-verdict"} role="status">
          <Figure label={words.handDifference} of={asked} value={hand.difference} note={hand.verdict && words.handVerdicts[hand.verdict]} />
          <p>{hand.text}</p>
        </div>
      )}
    </>
  );
}
