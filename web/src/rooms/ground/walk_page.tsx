// An edge walked with the phone in hand. Positions reach the disk every few seconds; gaps are shown.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useForm } from "@/notebook/forms";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Choice, Tick } from "@/parts/fields";
import { Outline, type Line } from "@/parts/outline";
import { PositionState } from "@/positions/position_state";
import { partsOf, type Fix } from "@/positions/fixes";
import { begin, forget, go, pause, takeBack, useRecording, type Recording } from "@/positions/recorder";
import { thinned } from "@/positions/nearness";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, say, useWords } from "@/words/words";
import { AreaFigures } from "./area_figures";
import { askArea, standDraft, type StandWords } from "./ground_of";
import { StandWordFields } from "./stand_words";

export function WalkPage(): JSX.Element {
  const { ground, common } = useWords();
  const found = useRecording();
  const [problem, setProblem] = useState(false);
  const start = () => begin("edge", "").then(() => setProblem(false), () => setProblem(true));
  return (
    <main>
      <PageHead title={ground.walk} back={address("ground")} />
      {found?.head.use === "pass" && <p class="refusal">{ground.busy}</p>}
      {found === undefined && (
        <>
          <p>{ground.walkIntro}</p>
          {problem && (
            <p class="refusal" role="alert">
              {common.full}
            </p>
          )}
          <button type="button" class="button go wide" onClick={() => void start()}>
            {ground.walkStart}
          </button>
        </>
      )}
      {found?.head.use === "edge" && <Walking of={found} />}
    </main>
  );
}

const steps = ["1", "3", "5"] as const;
type Step = (typeof steps)[number];

/** The middle one of what the phone said its positions were good to. */
function usualAccuracy(fixes: Fix[]): string {
  const sorted = fixes.map(({ accuracy_m }) => accuracy_m).sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  return middle === undefined ? "" : `${middle} m`;
}

// The edge as a closed ring, each place once.
function ringOf(fixes: Fix[]): number[][] {
  const places = fixes.filter(({ lon, lat }, index) => lon !== fixes[index - 1]?.lon || lat !== fixes[index - 1]?.lat);
  return [...places, ...places.slice(0, 1)].map(({ lon, lat }) => [lon, lat]);
}

// Solid where somebody walked, dashed where nobody knows.
function linesOf(fixes: Fix[]): Line[] {
  const parts = partsOf(fixes).map((part) => part.map(({ lon, lat }) => [lon, lat]));
  const walked = parts.map((points): Line => ({ points, style: "edge" }));
  const between = parts.slice(1).map((points, index): Line => ({ points: [parts[index]?.at(-1) ?? [], points[0] ?? []], style: "gap" }));
  return [...walked, ...between];
}

function Walking({ of }: { of: Recording }): JSX.Element {
  const { ground } = useWords();
  const [step, setStep] = useState<Step>("1");
  const [round, setRound] = useState(false);
  const kept = thinned(of.fixes, Number(step));
  const here = of.fixes.at(-1);
  const boundary = { type: "Polygon" as const, coordinates: [ringOf(kept)] };
  const enough = kept.length >= 3;
  return (
    <>
      <PositionState of={of} />
      <p>{of.fixes.length === 0 ? ground.waiting : `${count(kept.length, ground.positions)}${of.running ? "" : `. ${ground.paused}`}`}</p>
      <Outline label={ground.walk} lines={linesOf(kept)} here={here && [here.lon, here.lat]} />
      {of.head.gaps.length > 0 && <p class="refusal">{count(of.head.gaps.length, ground.gaps)}</p>}
      {round && enough ? (
        <Finish of={of} boundary={boundary} step={step} onStep={setStep} />
      ) : (
        <>
          {enough && <AreaFigures of={askArea(boundary, usualAccuracy(kept))} />}
          <div class="acts">
            <button type="button" class="button main wide" disabled={!enough} onClick={() => void pause().then(() => setRound(true))}>
              {ground.walkDone}
            </button>
            <button type="button" class="button" onClick={() => (of.running ? void pause() : go())}>
              {of.running ? ground.walkPause : ground.walkGoOn}
            </button>
            <button type="button" class="button" disabled={of.fixes.length < 6} onClick={() => void takeBack(5)}>
              {say(ground.walkBack, 5)}
            </button>
          </div>
        </>
      )}
      <button type="button" class="button quiet" onClick={() => void forget()}>
        {ground.walkThrow}
      </button>
    </>
  );
}

interface FinishProps {
  of: Recording;
  boundary: { type: "Polygon"; coordinates: number[][][] };
  step: Step;
  onStep: (step: Step) => void;
}

function Finish({ of, boundary, step, onStep }: FinishProps): JSX.Element {
  const { ground } = useWords();
  const form = useForm<StandWords & { offset: string; seen: boolean }>("stand/walked", { name: "", offset: "", seen: false });
  const saving = useSaving();
  const { offset, seen, ...words } = form.value;
  const error = usualAccuracy(of.fixes);
  const asked = askArea(boundary, error, offset);
  const gaps = of.head.gaps.length > 0;
  const ready = asked.answer !== undefined && words.name.trim() !== "" && (!gaps || seen);
  const save = async () => {
    const draft = standDraft(words, "walked", boundary, asked, error);
    if (!(await saving.save([draft]))) return;
    form.clear();
    await forget();
    goInstead("ground", draft.subject);
  };
  return (
    <>
      <AreaFigures of={asked} />
      <Choice label={ground.stepLabel} hint={ground.stepHint} value={step} options={steps.map((value) => ({ value, label: `${value} m` }))} onValue={onStep} />
      {gaps && <Tick label={ground.gapsSeen} checked={seen} onValue={(on) => form.set({ seen: on })} />}
      <AmountField label={ground.edgeOffset} hint={ground.edgeOffsetHint} required={false} value={offset} units={unitsOf.length} onValue={(text) => form.set({ offset: text })} />
      <StandWordFields value={words} nameError={words.name.trim() === "" ? ground.needName : undefined} onValue={(part) => form.set(part)} />
      <button type="button" class="button wide" onClick={go}>
        {ground.walkGoOn}
      </button>
      <SaveBar saving={saving} onSave={() => void save()} disabled={!ready} label={ground.save} />
    </>
  );
}
