// Sheets of paper on the screen, and the steps to print them or keep them as a PDF.
import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";
import { useWords } from "@/words/words";
import type { PaperSize } from "./order";

/** Tells the printer the size of the page; a style sheet of its own, because no style may stand in the page. */
export function usePageSize(paper: PaperSize): void {
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`@page { size: ${paper === "a4" ? "A4" : "letter"}; margin: 14mm 13mm; }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
    };
  }, [paper]);
}

export function PrintSteps(): JSX.Element {
  const { records } = useWords();
  return (
    <details class="print-steps no-print">
      <summary>{records.printHow}</summary>
      <ul>
        <li>{records.printDesk}</li>
        <li>{records.printAndroid}</li>
        <li>{records.printApple}</li>
      </ul>
    </details>
  );
}

export function PrintButton({ disabled }: { disabled?: boolean }): JSX.Element {
  const { records } = useWords();
  return (
    <button type="button" class="button main wide no-print" disabled={disabled} onClick={() => print()}>
      {records.printNow}
    </button>
  );
}

export function Sheets({ children }: { children: ComponentChildren }): JSX.Element {
  return <div class="sheets">{children}</div>;
}
