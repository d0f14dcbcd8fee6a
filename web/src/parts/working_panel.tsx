// The pencil page of an answer: each step with its relation, the values put in, the result and its source.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { Step } from "@/core/operations.gen";
import { say, useWords } from "@/words/words";
import { Panel } from "./panel";

interface Props {
  title: string;
  of: Asked;
  /** The number that was pressed: the steps that end in it are marked. */
  result?: string;
  onClose: () => void;
}

export function WorkingPanel({ title, of, result, onClose }: Props): JSX.Element {
  const { common } = useWords();
  const marked = stepsFor(of.working, result);
  return (
    <Panel title={say(common.workingOf, title)} onClose={onClose}>
      <p class="hint">{common.workingIntro}</p>
      <ol class="steps">
        {of.working.map((step, index) => (
          <li key={index} class={marked.has(index) ? "step marked" : "step"}>
            {marked.has(index) && <span class="step-mark">{common.thisStep}</span>}
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
      <h3>{common.values}</h3>
      <Values of={of.request} />
    </Panel>
  );
}

function stepsFor(working: Step[], result: string | undefined): Set<number> {
  if (result === undefined) return new Set();
  const number = result.split(" ")[0] ?? "";
  return new Set(working.flatMap((step, index) => (step.result.split(/[ (]/).includes(number) ? [index] : [])));
}

/** What was typed, as a plain list: names as the command line has them, so that anyone can ask again. */
function Values({ of }: { of: unknown }): JSX.Element {
  return (
    <dl class="values">
      {lines(of, "").map(([name, value]) => (
        <div key={name}>
          <dt>{name.replaceAll("_", " ")}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function lines(value: unknown, name: string): Array<[string, string]> {
  if (value === undefined || value === null || value === "") return [];
  if (Array.isArray(value)) {
    if (value.length > 40) return [[name, `${value.length} ×`]];
    return value.flatMap((item: unknown, index) => lines(item, `${name} ${index + 1}`));
  }
  if (typeof value === "object") {
    if ("coordinates" in value) return [[name, String((value as { type?: unknown }).type)]];
    return Object.entries(value).flatMap(([key, item]) => lines(item as unknown, name === "" ? key : `${name}, ${key}`));
  }
  return [[name, String(value)]];
}
