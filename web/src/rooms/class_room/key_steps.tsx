// The worked key of a problem, step by step, and the mistake that is made most.
import type { JSX } from "preact";
import type { PracticeProblem } from "@/core/operations.gen";
import { show, showNumber, showUnit } from "@/core/quantity";
import { say, useWords } from "@/words/words";

export function KeySteps({ problem }: { problem: PracticeProblem }): JSX.Element {
  const { classRoom, common } = useWords();
  const { answer, common_mistake: mistake, working, accept_within: within } = problem;
  const unit = answer?.unit ?? "";
  const shown = stepsOf(problem);
  return (
    <div class="key">
      <p>
        {classRoom.key} <strong class="key-answer">{show({ value: answer?.value ?? 0, unit })}</strong> {within !== undefined && within > 0 && say(classRoom.acceptWithin, showNumber(within), showUnit(unit))}
      </p>
      {(working ?? []).length > 0 && (
        <ol class="steps">
          {shown.map((step, index) => (
            <li key={index} class="step">
              <span class="step-text">{step.text}</span>
              <span class="step-sum">
                {step.expression} = <strong>{step.result}</strong>
              </span>
              {step.source && (
                <span class="step-source">
                  {common.source}: {step.source}
                </span>
              )}
            </li>
          ))}
        </ol>
      )}
      {mistake?.text && (
        <p class="hint">
          {say(classRoom.commonMistake, mistake.text, show({ value: mistake.wrong_answer ?? 0, unit }))}
        </p>
      )}
    </div>
  );
}

// The operation shows every shortcut course; the key of this problem is the steps that end in its answer.
function stepsOf({ topic, working = [], answer }: PracticeProblem): typeof working {
  if (topic !== "course" || answer?.value === undefined) return working;
  const wanted = showNumber(answer.value);
  const own = working.filter(({ result }) => (result ?? "").split(" ")[0] === wanted);
  return own.length === 0 ? working : own;
}
