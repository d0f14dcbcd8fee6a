// Lists of things: whole rows are targets.
import type { ComponentChildren, JSX } from "preact";
import { useWords } from "@/words/words";

export function ThingList({ children, empty }: { children: JSX.Element[]; empty?: ComponentChildren }): JSX.Element {
  const { common } = useWords();
  if (children.length === 0) return <div class="empty">{empty ?? common.empty}</div>;
  return <ul class="things">{children}</ul>;
}

interface RowProps {
  href: string;
  title: string;
  /** Under the title. */
  note?: ComponentChildren;
  /** At the right: the number that matters. */
  end?: ComponentChildren;
}

export function ThingRow({ href, title, note, end }: RowProps): JSX.Element {
  return (
    <li>
      <a class="thing" href={href}>
        <span class="thing-text">
          <strong>{title}</strong>
          {note && <span class="thing-note">{note}</span>}
        </span>
        {end && <span class="thing-end">{end}</span>}
      </a>
    </li>
  );
}

/** A part of a page under its heading. */
export function Section({ title, children, aside }: { title: string; children: ComponentChildren; aside?: ComponentChildren }): JSX.Element {
  return (
    <section class="section">
      <div class="section-head">
        <h2>{title}</h2>
        {aside}
      </div>
      {children}
    </section>
  );
}

/** Cautions where the act happens: short, once, not in the way. */
export function Caution({ children }: { children: ComponentChildren }): JSX.Element {
  return <div class="caution">{children}</div>;
}
