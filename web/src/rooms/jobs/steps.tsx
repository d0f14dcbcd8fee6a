// Short groups of a long form, each a press away; and what stands over a form that was left half-way.
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { ClearForm } from "@/parts/clear_form";
import { say, useWords } from "@/words/words";

interface Props {
  steps: string[];
  at: number;
  onStep: (step: number) => void;
}

export function StepBar({ steps, at, onStep }: Props): JSX.Element {
  const { jobs } = useWords();
  const bar = useRef<HTMLElement>(null);
  const shown = useRef(at);
  useEffect(() => {
    const current = bar.current?.children[at];
    if (!bar.current || !(current instanceof HTMLElement)) return;
    bar.current.scrollLeft = current.offsetLeft - bar.current.clientWidth / 3;
    if (shown.current === at) return;
    shown.current = at;
    scrollTo(0, 0); // the next group begins at its top, not where the last one ended
    current.focus({ preventScroll: true });
  }, [at]);
  return (
    <nav ref={bar} class="steps-bar" aria-label={jobs.steps}>
      {steps.map((step, index) => (
        <button key={step} type="button" class={index === at ? "step-tab current" : "step-tab"} aria-current={index === at ? "step" : undefined} onClick={() => onStep(index)}>
          <span class="step-number">{say(jobs.stepOf, index + 1, steps.length)}</span>
          {step}
        </button>
      ))}
    </nav>
  );
}

export function FormNotices({ resumed, onClear }: { resumed: boolean; onClear: () => void }): JSX.Element | null {
  const { common } = useWords();
  if (!resumed) return null;
  return (
    <div class="resumed">
      <p role="status">{common.resumed}</p>
      <ClearForm onClear={onClear} />
    </div>
  );
}
