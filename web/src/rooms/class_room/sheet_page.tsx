// A practice sheet or its key as paper: black on white, room to work beside each problem.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useSettings } from "@/app/settings";
import { RefusalNote } from "@/parts/findings";
import { PrintButton, PrintSteps, Sheets, usePageSize } from "@/paper/sheet_frame";
import { say, useWords } from "@/words/words";
import { KeySteps } from "./key_steps";
import { askSheet, usePractice } from "./practice_form";
import { SheetLine } from "./practice_page";

export function SheetPage({ withKey }: { withKey: boolean }): JSX.Element {
  const { classRoom, common } = useWords();
  const { units } = useSettings();
  const { value } = usePractice();
  const asked = askSheet({ ...value, checked: false });
  const problems = asked.answer?.problems ?? [];
  usePageSize(units === "metric" ? "a4" : "letter");
  const title = withKey ? classRoom.keyTitle : classRoom.practiceTitle;
  return (
    <main class="paper-page">
      <PageHead title={title} back={address("class", "practice")} />
      <RefusalNote of={asked.refusal} />
      <PrintButton disabled={problems.length === 0} />
      <PrintSteps />
      <Sheets>
        <article class="practice-sheet">
          <h2>{title}</h2>
          <SheetLine form={value} />
          {!withKey && (
            <p class="sheet-names">
              <span>{common.name}</span>
              <span>{classRoom.date}</span>
            </p>
          )}
          <ol class="problems">
            {problems.map((problem) => (
              <li class="problem" key={problem.number}>
                <h3>{say(classRoom.problem, problem.number ?? 0)}</h3>
                <p class="problem-text">{problem.text}</p>
                {withKey ? <KeySteps problem={problem} /> : <p class="answer-line">{say(classRoom.answerLine, problem.asks ?? "", problem.answer?.unit ?? "")}</p>}
              </li>
            ))}
          </ol>
          {asked.findings.map(({ code, text }) => (
            <p key={code} class="sheet-note">
              {text}
            </p>
          ))}
        </article>
      </Sheets>
    </main>
  );
}
