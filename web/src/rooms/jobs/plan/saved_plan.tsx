// The plan as it was saved: its own numbers with the day and the version, never computed again.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { LoadsAnswer, SpotAnswer, StemsAnswer } from "@/core/operations.gen";
import type { Job } from "@/notebook/things";
import { Figure } from "@/parts/answer";
import { Findings } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, showDate, useWords } from "@/words/words";
import { Loads } from "./plan_answer";

type Plan = NonNullable<Job["plan"]>;

export function SavedPlan({ plan }: { plan: Plan }): JSX.Element | null {
  const { jobs } = useWords();
  if (plan.answer === undefined) return null;
  const kept = { ...plan, findings: plan.answer.findings ?? [], working: plan.answer.working ?? [] } as unknown as Asked;
  return (
    <Section title={jobs.plan.saved}>
      <p class="hint">{say(jobs.plan.savedOn, plan.on ? showDate(plan.on) : "", plan.model ?? "")}</p>
      <Findings of={kept.findings.filter(({ severity }) => severity === "stop" || severity === "warning")} />
      {plan.operation === "loads" && <LoadsKept kept={kept} answer={plan.answer as LoadsAnswer} />}
      {plan.operation === "spot" && <SpotKept kept={kept} answer={plan.answer as SpotAnswer} />}
      {plan.operation === "stems" && <StemsKept kept={kept} answer={plan.answer as StemsAnswer} />}
    </Section>
  );
}

function LoadsKept({ kept, answer }: { kept: Asked; answer: LoadsAnswer }): JSX.Element {
  const { jobs } = useWords();
  return (
    <>
      <div class="figures">
        <Figure label={jobs.plan.totalMix} of={kept} value={answer.total_mix} size="main" />
        <Figure label={jobs.plan.loadCount} of={kept} value={answer.load_count} />
        <Figure label={jobs.plan.firstFill} of={kept} value={answer.loads?.[0]?.fill} />
      </div>
      <Loads answer={answer} />
    </>
  );
}

function SpotKept({ kept, answer }: { kept: Asked; answer: SpotAnswer }): JSX.Element {
  const { jobs } = useWords();
  return (
    <div class="figures">
      <Figure label={jobs.plan.mix} of={kept} value={answer.mix_per_area} />
      {(answer.products ?? []).map((product, index) => (
        <Figure key={index} label={say(jobs.spot.hidden, product.name ?? "")} of={kept} value={product.volume_per_area ?? product.mass_per_area} />
      ))}
    </div>
  );
}

function StemsKept({ kept, answer }: { kept: Asked; answer: StemsAnswer }): JSX.Element {
  const { jobs } = useWords();
  return (
    <div class="figures">
      <Figure label={jobs.stems.perAcre} of={kept} value={answer.cuts_per_acre} />
      <Figure label={jobs.stems.onArea} of={kept} value={answer.cuts_on_area} />
    </div>
  );
}
