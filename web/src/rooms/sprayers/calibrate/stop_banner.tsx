// Remarks that cost a field when they are missed: a shortcut that does not belong to the course, a stop. They
// are ticked before anything is saved.
import type { JSX } from "preact";
import type { Finding, Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { Tick } from "@/parts/fields";
import { Sign } from "@/parts/findings";
import { say, useWords } from "@/words/words";

export const mustRead = (findings: Finding[]): Finding[] =>
  findings.filter(({ severity, code }) => severity === "stop" || (severity === "warning" && code.startsWith("shortcut_")));

/** Stands for these remarks about this output: when either changes, they are to be read again. */
export const tokenOf = (findings: Finding[], output: Quantity | undefined): string => `${findings.map(({ code, severity }) => `${severity} ${code}`).join(", ")}; ${show(output)}`;

interface Props {
  of: Finding[];
  output: Quantity | undefined;
  agreed: boolean;
  onAgreed: (yes: boolean) => void;
}

export function StopBanner({ of, output, agreed, onAgreed }: Props): JSX.Element | null {
  const { sprayers } = useWords();
  const words = sprayers.calibrate.result;
  if (of.length === 0) return null;
  return (
    <section class="stop-banner" role="alert">
      <h3>
        <Sign severity="stop" />
        {words.fixBanner}
      </h3>
      {of.map(({ code, text }, index) => (
        <p key={`${code}${index}`}>{text}</p>
      ))}
      <Tick label={say(words.ack, show(output))} checked={agreed} onValue={onAgreed} />
    </section>
  );
}
