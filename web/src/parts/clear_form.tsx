// Throwing away what was typed: asked twice, because nothing brings it back.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useWords } from "@/words/words";

export function ClearForm({ onClear }: { onClear: () => void }): JSX.Element {
  const { common } = useWords();
  const [asking, setAsking] = useState(false);
  if (!asking) {
    return (
      <button type="button" class="button quiet" onClick={() => setAsking(true)}>
        {common.clearForm}
      </button>
    );
  }
  return (
    <div class="row" role="group" aria-label={common.clearForm}>
      <button type="button" class="button stop" onClick={onClear}>
        {common.clearForm}
      </button>
      <button type="button" class="button" onClick={() => setAsking(false)}>
        {common.cancel}
      </button>
    </div>
  );
}
