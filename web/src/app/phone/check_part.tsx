// Every seal and every chain on this phone, checked by the core.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { chainProblems, state, useNotebook } from "@/notebook/notebook";
import { Section } from "@/parts/list";
import { count, useWords } from "@/words/words";

export function CheckPart(): JSX.Element {
  useNotebook();
  const { sync } = useWords();
  const [found, setFound] = useState<string[]>();
  const { digest, entries } = state();
  const run = async () => setFound((await chainProblems()).map(({ text }) => text));
  return (
    <Section title={sync.checkTitle}>
      <p>{sync.checkIntro}</p>
      <button type="button" class="button wide" onClick={() => void run()}>
        {sync.checkRun}
      </button>
      <div role="status">
        {found?.length === 0 && <p>{count(entries, sync.checkSound)}</p>}
        {found?.map((text, index) => (
          <p key={index} class="refusal">
            {text}
          </p>
        ))}
      </div>
      <p>
        {sync.checkDigest}: <code class="digest">{digest.slice(0, 12)}</code>
        <small>{sync.checkDigestHint}</small>
      </p>
    </Section>
  );
}
