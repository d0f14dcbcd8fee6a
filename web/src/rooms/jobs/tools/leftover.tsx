import type { JSX } from "preact";
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { Answered, LeftoverOption } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { useThings } from "@/notebook/notebook";
import type { JobProduct } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { Choice, TextField, Tick } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { cardsOf, errorAt, tankProducts } from "../job_data";
import { ProductsForm } from "../plan/products_form";
import { FormNotices } from "../steps";
import type { ToolProps } from "./tool_pages";

interface Ground {
  name: string;
  net_area: string;
  on_label: Answered;
  sprayed_in_this_job: boolean;
}
const noGround: Ground = { name: "", net_area: "", on_label: "not_said", sprayed_in_this_job: false };

/** Mix left in the tank: the ways that nothing typed forbids, best first. */
export function Leftover({ job }: ToolProps): JSX.Element {
  const { common, jobs } = useWords();
  const words = jobs.tools.leftover;
  const cardOf = cardsOf(useThings("product_card"), job?.fields);
  const first = { left: "", mix_per_area: job?.fields.mix_per_area ?? "", products: (job?.fields.products ?? []) as JobProduct[], ground: [noGround], keeping: "not_said" as Answered };
  const { value: form, set, clear, resumed } = useForm(`jobs/leftover/${job?.id ?? "alone"}`, first);
  const ground = form.ground.filter(({ net_area }) => net_area !== "").map((one, index) => ({ ...one, name: one.name.trim() || say(words.groundNumber, index + 1) }));
  const request: RequestOf<"leftover"> = { left: form.left, mix_per_area: form.mix_per_area, products: tankProducts(form.products, cardOf), ground, labels_allow_keeping: form.keeping };
  const asked = ask("leftover", request);
  const change = (at: number, part: Partial<Ground>) => set({ ground: form.ground.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  const answers = (["yes", "no", "not_said"] as const).map((value) => ({ value, label: words.answers[value] }));
  return (
    <>
      <FormNotices resumed={resumed} onClear={clear} />
      <div class="two">
        <AmountField label={words.left} units={unitsOf.tank} value={form.left} error={errorAt(asked, "left", form.left)} onValue={(left) => set({ left })} />
        <AmountField label={jobs.plan.mix} units={unitsOf.mixPerArea} value={form.mix_per_area} error={errorAt(asked, "mix_per_area", form.mix_per_area)} onValue={(mix_per_area) => set({ mix_per_area })} />
      </div>
      <Section title={words.inIt}>
        <ProductsForm products={form.products} cardOf={cardOf} asked={asked} onProducts={(change) => set((now) => ({ ...now, products: change(now.products) }))} />
      </Section>
      <Section title={words.ground}>
        {form.ground.map((one, index) => (
          <fieldset key={index} class="product">
            <legend>{one.name || say(words.groundNumber, index + 1)}</legend>
            <div class="two">
              <TextField label={common.name} required={false} value={one.name} onValue={(name) => change(index, { name })} />
              <AmountField label={words.area} required={false} units={unitsOf.area} value={one.net_area} error={errorAt(asked, `ground[${index}].net_area`, one.net_area)} onValue={(net_area) => change(index, { net_area })} />
            </div>
            <Choice label={words.onLabel} value={one.on_label} options={answers} onValue={(on_label) => change(index, { on_label })} />
            <Tick label={words.sprayed} checked={one.sprayed_in_this_job} onValue={(sprayed_in_this_job) => change(index, { sprayed_in_this_job })} />
          </fieldset>
        ))}
        <button type="button" class="button wide" onClick={() => set({ ground: [...form.ground, noGround] })}>
          {words.moreGround}
        </button>
        <Choice label={words.keeping} value={form.keeping} options={answers} onValue={(keeping) => set({ keeping })} />
      </Section>
      {form.left !== "" && <LeftoverAnswerView asked={asked} />}
    </>
  );
}

function LeftoverAnswerView({ asked }: { asked: Asked<"leftover"> }): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.leftover;
  return (
    <section class="plan-answer">
      <RefusalNote of={asked.refusal} />
      <Findings of={asked.findings} />
      {asked.answer && (
        <>
          <div class="figures">
            <Figure label={words.absorbing} of={asked} value={asked.answer.absorbing_area} size="main" />
          </div>
          <ol class="ways">
            {(asked.answer.options ?? []).map((option) => (
              <Way key={`${option.rank ?? ""}${option.way ?? ""}`} option={option} />
            ))}
          </ol>
          <WorkingButton of={asked} title={jobs.tools.names.leftover} />
        </>
      )}
    </section>
  );
}

function Way({ option }: { option: LeftoverOption }): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.leftover;
  return (
    <li class={`way ${option.lawful ?? "cannot_tell"}`}>
      <strong>
        {option.way && words.ways[option.way]}
        {option.ground ? `, ${option.ground}` : ""}: {show(option.mix)}
      </strong>
      <em>{words.lawful[option.lawful ?? "cannot_tell"]}</em>
      <p>{option.text}</p>
    </li>
  );
}
