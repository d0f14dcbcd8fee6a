// A number of an answer on the screen: always with its unit, its interval when it was measured, and a
// touch away from the steps it came by.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Asked } from "@/core/core";
import type { Quantity } from "@/core/operations.gen";
import { measured, show, showNumber, showUnit } from "@/core/quantity";
import { say, useWords } from "@/words/words";
import { WorkingPanel } from "./working_panel";

interface Props {
  label: string;
  of: Asked | undefined;
  value: Quantity | number | string | undefined;
  /** "main" is read at arm's length. */
  size?: "main" | "plain" | "small";
  /** A word or two under the number. */
  note?: string;
}

/** One number with its label; a press opens its working. */
export function Figure({ label, of, value, size = "plain", note }: Props): JSX.Element | null {
  const { common } = useWords();
  const [open, setOpen] = useState(false);
  if (value === undefined || of === undefined) return null;
  const text = textOf(value);
  return (
    <div class={`figure ${size}`}>
      <button type="button" class="figure-press" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        <span class="figure-label">{label}</span>
        <Amount value={value} />
        {note && <span class="figure-note">{note}</span>}
        <span class="visually-hidden">{say(common.showWorking, label)}</span>
      </button>
      {open && <WorkingPanel title={label} of={of} result={text} onClose={() => setOpen(false)} />}
    </div>
  );
}

function textOf(value: Quantity | number | string): string {
  if (typeof value === "number") return showNumber(value);
  return typeof value === "string" ? value : show(value);
}

function Amount({ value }: { value: Quantity | number | string }): JSX.Element {
  const { common } = useWords();
  if (typeof value !== "object") return <span class="figure-value">{textOf(value)}</span>;
  const amount = measured(value);
  const { low, high } = amount ?? {};
  return (
    <>
      <span class="figure-value">
        {showNumber(value.value)} <span class="figure-unit">{showUnit(value.unit)}</span>
      </span>
      {low !== undefined && high !== undefined && <span class="figure-interval">{say(common.interval, showNumber(low), showNumber(high))}</span>}
    </>
  );
}

/** The button alone, for answers whose numbers stand in tables. */
export function WorkingButton({ of, title }: { of: Asked | undefined; title: string }): JSX.Element | null {
  const { common } = useWords();
  const [open, setOpen] = useState(false);
  if (of === undefined || of.working.length === 0) return null;
  return (
    <>
      <button type="button" class="button quiet" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {common.working}
      </button>
      {open && <WorkingPanel title={title} of={of} onClose={() => setOpen(false)} />}
    </>
  );
}
