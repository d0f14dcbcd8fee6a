// What every field of a form has: label, hint, box, and the sentence that says what is wrong with it.
import type { ComponentChildren, JSX } from "preact";
import { useWords } from "@/words/words";

interface Props {
  id: string;
  label: string;
  hint?: string;
  error?: string;
  required?: boolean;
  /** For groups of buttons: the label is a legend. */
  group?: boolean;
  children: ComponentChildren;
}

export function FieldFrame({ id, label, hint, error, required = true, group, children }: Props): JSX.Element {
  const { common } = useWords();
  const optional = required ? null : <span class="optional"> {common.optional}</span>;
  const rest = (
    <>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children}
      {error && (
        <p class="error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </>
  );
  if (group) {
    return (
      <fieldset class="field" id={id} aria-describedby={error ? `${id}-error` : hint ? `${id}-hint` : undefined}>
        <legend>
          {label}
          {optional}
        </legend>
        {rest}
      </fieldset>
    );
  }
  return (
    <div class={error ? "field wrong" : "field"}>
      <label for={id}>
        {label}
        {optional}
      </label>
      {rest}
    </div>
  );
}
