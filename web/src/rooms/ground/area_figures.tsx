// What the core says of an outline.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { measured, show } from "@/core/quantity";
import { Figure } from "@/parts/answer";
import { Findings, RefusalNote } from "@/parts/findings";
import { count, say, useWords } from "@/words/words";

export function AreaFigures({ of }: { of: Asked<"area"> }): JSX.Element {
  const { ground } = useWords();
  const { answer } = of;
  if (answer === undefined) return <RefusalNote of={of.refusal} />;
  const parts = answer.parts ?? [];
  const held = (answer.holes ?? 0) > 0 ? count(answer.holes ?? 0, ground.holes) : undefined;
  const carries = (measured(answer.carry_more)?.value ?? 0) > 0;
  return (
    <>
      <div class="figures">
        <Figure size="main" label={ground.area} of={of} value={answer.area} note={held} />
        <Figure label={ground.perimeter} of={of} value={answer.perimeter} />
        {carries && <Figure label={ground.carryMore} of={of} value={answer.carry_more} />}
      </div>
      <Findings of={of.findings} />
      {parts.length > 1 && (
        <ul class="part-list">
          {parts.map((part, index) => (
            <li key={index}>
              {part.name || say(ground.part, index + 1)}: <strong>{show(part.area)}</strong>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
