// What the tips say: the set first, what to do, then each tip.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { Figure } from "@/parts/answer";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { TipBars } from "./tip_bars";

// These say what already stands beside the tip itself.
const aboutOneTip = new Set(["tip_high", "tip_low", "tip_at_limit"]);

export function TipResultPart({ asked }: { asked: Asked<"tip-check"> }): JSX.Element | null {
  const { sprayers } = useWords();
  const words = sprayers.tips;
  const { answer, refusal } = asked;
  if (answer === undefined) {
    const started = (asked.request.flows ?? asked.request.volumes ?? []).length > 0;
    return started ? <RefusalNote of={refusal} /> : null;
  }
  const named = (tips: number[] | undefined) => (tips && tips.length > 0 ? tips.map((tip) => say(words.tipList, tip)).join(", ") : words.none);
  return (
    <Section title={words.bars}>
      <div class="figures">
        <Figure size="main" label={words.mean} of={asked} value={answer.mean} />
        <Figure label={words.fromRating} of={asked} value={answer.mean_from_rating} />
        <Figure label={words.variation} of={asked} value={answer.variation} />
        <Figure label={words.after} of={asked} value={answer.mean_after} />
        <Figure label={words.rateNow} of={asked} value={answer.rate_now} />
        <Figure label={words.rateAfter} of={asked} value={answer.rate_after} />
      </div>
      <dl class="todo">
        <div>
          <dt>{words.replace}</dt>
          <dd>{answer.replace_all ? sprayers.tipsAll : named(answer.replace)}</dd>
        </div>
        <div>
          <dt>{words.clean}</dt>
          <dd>{named(answer.clean)}</dd>
        </div>
      </dl>
      <TipBars of={asked} />
      <Findings of={asked.findings.filter(({ code }) => !aboutOneTip.has(code))} />
    </Section>
  );
}
