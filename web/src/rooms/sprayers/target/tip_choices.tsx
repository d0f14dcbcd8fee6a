// Sizes of the colour code for the target, best first, each with what speaks for and against it.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { TipChoice } from "@/core/operations.gen";
import { useSettings } from "@/app/settings";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { useWords } from "@/words/words";

export function TipChoices({ of }: { of: Asked<"choose-tip"> }): JSX.Element {
  const words = useWords().sprayers.target;
  const choices = of.answer?.choices ?? [];
  const usable = choices.filter(({ fit }) => fit !== "refused");
  const refused = choices.filter(({ fit }) => fit === "refused");
  return (
    <>
      <ol class="choices-of-tips">
        {usable.map((choice) => (
          <ChoiceCard key={choice.name} choice={choice} of={of} />
        ))}
      </ol>
      {refused.length > 0 && (
        <details class="fold">
          <summary>{words.more}</summary>
          <ol class="choices-of-tips">
            {refused.map((choice) => (
              <ChoiceCard key={choice.name} choice={choice} of={of} />
            ))}
          </ol>
        </details>
      )}
      <Findings of={of.findings} />
    </>
  );
}

function ChoiceCard({ choice, of }: { choice: TipChoice; of: Asked<"choose-tip"> }): JSX.Element {
  const { language } = useSettings();
  const words = useWords().sprayers.target;
  const { name, colour, colour_spanish: spanish, fit = "unproven", pressure, droplet_class: droplets, reasons_for: good = [], reasons_against: bad = [] } = choice;
  return (
    <li class={`tip-choice ${fit}`}>
      <h3>
        {name} <small>{language === "es" ? spanish : colour}</small>
        <span class="fit">{words.fits[fit]}</span>
      </h3>
      <Figure size="small" label={words.sizePressure} of={of} value={pressure} note={droplets && words.classNames[droplets]} />
      <ul>
        {[...good, ...bad].map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </li>
  );
}
