// Title of a page, the way back, and the way to the settings.
import type { ComponentChildren, JSX } from "preact";
import { useWords } from "@/words/words";
import { SavedState } from "./saved_state";

interface Props {
  title: string;
  /** Where "back" leads; none on the first page of a room. */
  back?: string;
  children?: ComponentChildren;
}

export function PageHead({ title, back, children }: Props): JSX.Element {
  const { common } = useWords();
  return (
    <header class="head">
      {back && (
        <a class="head-back" href={back}>
          <svg viewBox="0 0 24 24" width="24" height="24" fill="none" stroke="currentColor" stroke-width="3" aria-hidden="true">
            <path d="M15 4l-8 8 8 8" />
          </svg>
          <span>{common.back}</span>
        </a>
      )}
      <h1>{title}</h1>
      {children}
      <SavedState />
    </header>
  );
}
