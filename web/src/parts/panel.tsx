// A sheet over the page: from below on a phone, in the middle on a desk. Escape and the big button close it.
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { useWords } from "@/words/words";

interface Props {
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}

export function Panel({ title, onClose, children }: Props): JSX.Element {
  const id = useId();
  const { common } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog ref={dialog} class="panel" aria-labelledby={id} onClose={onClose} onCancel={onClose}>
      <h2 id={id}>{title}</h2>
      <div class="panel-body">{children}</div>
      <button type="button" class="button wide" onClick={onClose}>
        {common.close}
      </button>
    </dialog>
  );
}
