// Throwing away what was typed: asked twice, because nothing brings it back.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useWords } from "@/words/words";

interface Props {
  onClear: () => void;
  /** What the button says, where "empty this form" says too little. */
  label?: string;
  /** What is asked before. */
  question?: string;
}

export function ClearForm({ onClear, label, question }: Props): JSX.Element {
  const { common } = useWords();
  const [asking, setAsking] = useState(false);
  const text = label ?? common.clearForm;
  if (!asking) {
    return (
      <button type="button" class="button quiet" onClick={() => setAsking(true)}>
        {text}
      </button>
    );
  }
  const clear = () => {
    setAsking(false);
    onClear();
  };
  return (
    <div role="group" aria-label={text}>
      {question && <p role="status">{question}</p>}
      <div class="row">
        <button type="button" class="button stop" onClick={clear}>
          {text}
        </button>
        <button type="button" class="button" onClick={() => setAsking(false)}>
          {common.cancel}
        </button>
      </div>
    </div>
  );
}
