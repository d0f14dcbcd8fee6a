// The class side by side: mean, spread, where the spread comes from, each learner, and the hand answers.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { show } from "@/core/quantity";
import { Figure, WorkingButton } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { say, useWords } from "@/words/words";
import { HandVerdict } from "./hand_verdict";
import { SpreadPicture } from "./spread_picture";

export function ResultsPart({ asked }: { asked: Asked<"learners"> }): JSX.Element | null {
  const { classRoom } = useWords();
  const { answer } = asked;
  if (answer === undefined) return null;
  const learners = answer.learners ?? [];
  const hands = learners.filter(({ hand }) => hand !== undefined);
  const shares = answer.spread_shares ?? [];
  return (
    <>
      <div class="figures">
        <Figure size="main" label={classRoom.mean} of={asked} value={answer.mean} />
        <Figure label={classRoom.lowest} of={asked} value={answer.lowest} note={answer.lowest_by} />
        <Figure label={classRoom.highest} of={asked} value={answer.highest} note={answer.highest_by} />
        <Figure label={classRoom.spread} of={asked} value={answer.spread} />
        <Figure label={classRoom.variation} of={asked} value={answer.variation} />
      </div>
      <SpreadPicture answer={answer} />
      <Findings of={asked.findings} />
      {shares.length > 0 && learners.length > 1 && (
        <>
          <h3>{classRoom.whatSpreads}</h3>
          <p class="hint">{classRoom.whatSpreadsHint}</p>
          <table class="table">
            <thead>
              <tr>
                <th scope="col">{classRoom.measured}</th>
                <th scope="col" class="number">{classRoom.differs}</th>
                <th scope="col" class="number">{classRoom.share}</th>
              </tr>
            </thead>
            <tbody>
              {shares.map(({ source, deviation, share }) => (
                <tr key={source}>
                  <td>{classRoom.shareSources[source ?? "speed"]}</td>
                  <td class="number">{show(deviation)}</td>
                  <td class="number">{show(share)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      {hands.length > 0 && (
        <>
          <h3>{classRoom.hands}</h3>
          {hands.map(({ name, hand }) => hand && <HandVerdict key={name} name={name ?? ""} hand={hand} />)}
        </>
      )}
      {learners.flatMap(({ name, remarks }) => (remarks ?? []).map((remark) => (
        <p class="hint" key={`${name}${remark}`}>
          {say(classRoom.learner, name ?? "")}: {remark}
        </p>
      )))}
      <WorkingButton of={asked} title={classRoom.sideBySide} />
    </>
  );
}
