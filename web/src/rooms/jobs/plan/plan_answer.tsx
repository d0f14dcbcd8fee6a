// What the plan comes to: remarks first, then loads, totals, limits, measuring and the mixing order.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { Load, LoadsAnswer, ProductTotal, Quantity } from "@/core/operations.gen";
import { show, showNumber } from "@/core/quantity";
import { Figure, WorkingButton } from "@/parts/answer";
import { Findings, RefusalNote } from "@/parts/findings";
import { Caution, Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import type { Measure } from "../job_data";
import { LimitChecks, StrictestTable } from "./limits";

export function PlanAnswer({ asked, missing }: { asked: Asked<"loads">; missing?: string }): JSX.Element {
  const { jobs } = useWords();
  const answer = asked.answer;
  return (
    <section class="plan-answer">
      <h2 class="answer-title">{jobs.plan.answer}</h2>
      {missing === undefined ? <RefusalNote of={asked.refusal} /> : <p class="not-entered">{missing}</p>}
      {answer && (
        <>
          <Findings of={asked.findings} />
          <div class="figures">
            <Figure label={jobs.plan.totalMix} of={asked} value={answer.total_mix} size="main" />
            <Figure label={jobs.plan.loadCount} of={asked} value={answer.load_count} />
            <Figure label={jobs.plan.firstFill} of={asked} value={answer.loads?.[0]?.fill} />
            <Figure label={jobs.plan.treated} of={asked} value={answer.treated_area} />
          </div>
          <WorkingButton of={asked} title={jobs.plan.title} />
          <Loads answer={answer} />
          <Totals products={answer.products ?? []} />
          <LimitChecks products={answer.products ?? []} />
          <StrictestTable strictest={answer.strictest} />
          <Measuring answer={answer} />
          <Order answer={answer} />
          <Cautions of={answer.cautions} />
        </>
      )}
    </section>
  );
}

export function Loads({ answer }: { answer: LoadsAnswer }): JSX.Element {
  const { jobs } = useWords();
  const loads = answer.loads ?? [];
  return (
    <Section title={jobs.plan.loads}>
      <div class="loads">
        {alike(loads).map(({ load, last }) => (
          <LoadTable key={load.number} load={load} last={last} of={loads.length} />
        ))}
      </div>
    </Section>
  );
}

/** Neighbouring loads with the same amounts, as one: the first of them and the number of the last. */
function alike(loads: Load[]): Array<{ load: Load; last: number }> {
  const groups: Array<{ load: Load; last: number; amounts: string }> = [];
  for (const load of loads) {
    const { number = 1, ...rest } = load;
    const amounts = JSON.stringify(rest);
    const before = groups.at(-1);
    if (before?.amounts === amounts) before.last = number;
    else groups.push({ load, last: number, amounts });
  }
  return groups;
}

function LoadTable({ load, last, of }: { load: Load; last: number; of: number }): JSX.Element {
  const { jobs } = useWords();
  const { number = 1 } = load;
  return (
    <table class="table load">
      <caption>{number === last ? say(jobs.plan.loadNumber, number, of) : say(jobs.plan.loadNumbers, number, last, of)}</caption>
      <tbody>
        <Row name={jobs.plan.fill} value={show(load.fill)} strong />
        {(load.products ?? []).map((product, index) => (
          <Row key={index} name={product.name ?? ""} value={(product.amount as Measure | undefined)?.text ?? ""} note={product.jugs_emptied ? say(jobs.plan.jugsEmptied, product.jugs_emptied) : undefined} />
        ))}
        {typeof load.rinse_water === "object" && load.rinse_water.value > 0 && <Row name={jobs.plan.rinseWater} value={show(load.rinse_water)} note={jobs.plan.rinseCounts} />}
        <Row name={jobs.plan.carrier} value={show(load.carrier)} />
        {load.area && <Row name={jobs.plan.covers} value={show(load.area)} />}
      </tbody>
    </table>
  );
}

function Row({ name, value, note, strong }: { name: string; value: string; note?: string; strong?: boolean }): JSX.Element {
  return (
    <tr class={strong ? "strong" : undefined}>
      <th scope="row">
        {name}
        {note && <small>{note}</small>}
      </th>
      <td class="number">{value}</td>
    </tr>
  );
}

export function Totals({ products }: { products: ProductTotal[] }): JSX.Element | null {
  const { jobs } = useWords();
  if (products.length === 0) return null;
  return (
    <Section title={jobs.plan.totals}>
      {products.map((product, index) => (
        <table key={index} class="table">
          <caption>{product.name}</caption>
          <tbody>
            <Row name={jobs.plan.inAll} value={(product.total as Measure | undefined)?.text ?? ""} strong />
            {product.per_area && <Row name={jobs.plan.perArea} value={show(product.per_area)} />}
            {product.per_mix && <Row name={jobs.plan.perMix} value={show(product.per_mix)} />}
            {(product.ingredients ?? []).map((one) => (
              <Row key={one.name} name={one.name ?? ""} value={show(one.acid_per_area ?? one.ingredient_per_area)} />
            ))}
          </tbody>
        </table>
      ))}
    </Section>
  );
}

function Measuring({ answer }: { answer: LoadsAnswer }): JSX.Element | null {
  const { jobs } = useWords();
  const list = answer.measuring ?? [];
  if (list.length === 0) return null;
  return (
    <Section title={jobs.plan.measuring}>
      {list.map((advice, index) => (
        <div key={index} class={advice.fits ? "measure fits" : "measure"}>
          <h3>
            {advice.product}: {advice.exact}
          </h3>
          <p>{advice.first_load === advice.last_load ? say(jobs.plan.inLoad, advice.first_load ?? 1) : say(jobs.plan.inLoads, advice.first_load ?? 1, advice.last_load ?? 1)}</p>
          {advice.best && (
            <p class="measure-best">
              {advice.best.tool}: {advice.best.text} <span>({say(jobs.plan.off, offBy(advice.best.error))})</span>
            </p>
          )}
          {!advice.fits && <p class="error">{say(jobs.plan.noMarkFits, show(advice.finest_volume ?? advice.finest_mass))}</p>}
          {!advice.fits && advice.best?.batch && <p>{say(jobs.plan.batch, advice.best.tool ?? "", show(advice.best.batch))}</p>}
        </div>
      ))}
    </Section>
  );
}

// Two digits tell enough of a measuring error.
const offBy = (error: Quantity | undefined): string => (typeof error === "object" ? `${error.value > 0 ? "+" : ""}${showNumber(error.value, 2)} ${error.unit}` : "");

function Order({ answer }: { answer: LoadsAnswer }): JSX.Element | null {
  const { common, jobs } = useWords();
  const order = answer.order ?? [];
  const source = order.find((step) => step.source)?.source;
  if (order.length === 0) return null;
  return (
    <Section title={jobs.plan.orderTitle}>
      <ol class="order">
        {order.map((step) => (
          <li key={step.number}>
            {step.text} {(step.products?.length ?? 0) > 0 && <strong>{step.products?.join(", ")}</strong>}
          </li>
        ))}
      </ol>
      <p class="hint">
        {jobs.plan.orderLabel} {source && `${common.source}: ${source}.`}
      </p>
    </Section>
  );
}

export function Cautions({ of }: { of: string[] | undefined }): JSX.Element | null {
  if (of === undefined || of.length === 0) return null;
  return (
    <Caution>
      <ul class="cautions">
        {of.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Caution>
  );
}
