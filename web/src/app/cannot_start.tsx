import type { JSX } from "preact";
import { say, useWords } from "@/words/words";

/** What stands when core or notebook could not be opened. Nothing is deleted: a second try may do. */
export function CannotStart({ error }: { error: unknown }): JSX.Element {
  const { common } = useWords();
  return (
    <main class="page">
      <h1>{common.appName}</h1>
      <p role="alert">{say(common.cannotStart, error instanceof Error ? error.message : String(error))}</p>
      <button type="button" class="button main" onClick={() => location.reload()}>
        {common.tryAgain}
      </button>
    </main>
  );
}
