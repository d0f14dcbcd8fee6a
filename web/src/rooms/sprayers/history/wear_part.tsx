// Wear in words, numbers and a picture; "cannot tell yet" said plainly.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { show } from "@/core/quantity";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { say, showDate, useWords } from "@/words/words";
import { WearChart } from "./wear_chart";

export function WearPart({ of }: { of: Asked<"wear"> | undefined }): JSX.Element {
  const words = useWords().sprayers.history;
  const { answer } = of ?? {};
  if (of === undefined || answer === undefined) {
    return <p class="empty">{of?.refusal && of.request.points.length > 0 ? `${words.cannotTell} (${of.refusal.detail})` : words.cannotTell}</p>;
  }
  const day = answer.limit_on ? showDate(answer.limit_on) : undefined;
  const interval = answer.limit_on_early && answer.limit_on_late ? say(words.between, showDate(answer.limit_on_early), showDate(answer.limit_on_late)) : undefined;
  return (
    <>
      {answer.verdict === "not_enough_points" && <p class="empty">{words.cannotTell}</p>}
      <p class={answer.over_limit_now ? "not-reached" : "trend-text"}>{answer.text}</p>
      <div class="figures">
        <Figure label={words.overNew} of={of} value={answer.over_new_now} />
        <Figure label={say(words.slope, answer.slope_per ?? "")} of={of} value={answer.slope} />
        <Figure label={words.crossArea} of={of} value={answer.limit_at_area} />
        <Figure label={words.crossVolume} of={of} value={answer.limit_at_volume} />
        <Figure label={words.crossDay} of={of} value={day} note={interval} />
      </div>
      <WearChart of={answer} />
      <p class="hint">{say(words.limitFrom, show(answer.limit), answer.limit_source ?? "")}</p>
      <Findings of={of.findings} />
    </>
  );
}
