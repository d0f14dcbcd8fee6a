// Spot work: a percent in the tank, and the rate per area that hides behind it. Fills are counted with the
// thumb; the cap of the label stands beside the count.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { LimitCheck, Quantity, SpotFill, SpotProduct } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { newId, useThings, type Draft } from "@/notebook/notebook";
import type { JobProduct, Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { Choice } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { instant, say, useWords } from "@/words/words";
import { addedUp, cardsOf, errorAt, keep, tankProducts, type Measure } from "../job_data";
import { LimitChecks } from "../plan/limits";
import { ProductsForm } from "../plan/products_form";
import { FormNotices } from "../steps";
import { percentRates, sharePercent } from "./share";
import { Tally } from "./tally";

type Known = "counted" | "typed" | "plot";
interface SpotForm {
  products: JobProduct[];
  area: string;
  fill: string;
  known: Known;
  sprayed: string;
  mix_per_area: string;
  /** When each fill was sprayed out. */
  fills: string[];
}

function formOf({ fields }: Thing<"job">): SpotForm {
  const request = (fields.plan?.operation === "spot" ? fields.plan.request : {}) as Partial<RequestOf<"spot">>;
  const text = (quantity: Quantity | undefined) => (typeof quantity === "string" ? quantity : show(quantity));
  return {
    products: Array.isArray(fields.products) ? fields.products : [],
    area: text(request.area) || (fields.net_area ?? ""),
    fill: text(request.fills?.[0]) || (fields.tank_usable ?? ""),
    known: request.mix_per_area !== undefined ? "plot" : "counted",
    sprayed: "",
    mix_per_area: text(request.mix_per_area) || (fields.mix_per_area ?? ""),
    fills: [],
  };
}

export function SpotPage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  const cardOf = cardsOf(cards, job.fields);
  const { value: form, set, clear, resumed } = useForm<SpotForm>(`jobs/spot/${job.id}`, formOf(job));
  const saving = useSaving();
  const loads = useThings("load").filter(({ fields }) => fields.job === job.id);
  const before = addedUp(loads.map(({ fields }) => fields.mix ?? "")) ?? "";
  const asked = ask("spot", requestOf(form, before, tankProducts(form.products, cardOf)));
  const plan = keep(job.fields.name ?? "", asked);
  const save = async () => {
    if (plan === undefined) return;
    const body = { products: form.products, net_area: form.area, tank_usable: form.fill || null, plan };
    if (await saving.save([{ kind: "job", subject: job.id, body }, ...loadDrafts(job.id, form, loads.length, asked.answer?.fills?.[0])])) clear();
  };
  return (
    <main>
      <PageHead title={jobs.spot.title} back={address("jobs", job.id)} />
      <p class="job-name">{job.fields.name}</p>
      <FormNotices resumed={resumed} onClear={clear} />
      {form.known === "counted" && form.fill !== "" && form.products.length > 0 && (
        <FillCounter form={form} before={before} asked={asked} onCount={(count) => set((now) => ({ ...now, fills: count > now.fills.length ? [...now.fills, instant()] : now.fills.slice(0, count) }))} />
      )}
      <Section title={jobs.plan.products}>
        <p class="hint">{jobs.cards.youType}</p>
        <ProductsForm products={form.products} cardOf={cardOf} asked={asked} rates={percentRates} onProducts={(change) => set((now) => ({ ...now, products: change(now.products) }))} />
      </Section>
      <Section title={jobs.plan.ground}>
        <AmountField label={jobs.spot.area} hint={jobs.spot.areaHint} units={unitsOf.area} value={form.area} error={errorAt(asked, "area", form.area)} onValue={(area) => set({ area })} />
        <AmountField label={jobs.spot.fill} hint={jobs.spot.fillHint} required={false} units={unitsOf.tank} value={form.fill} error={errorAt(asked, "fills[0]", form.fill)} onValue={(fill) => set({ fill })} />
        <Choice label={jobs.spot.known} value={form.known} options={(["counted", "typed", "plot"] as const).map((value) => ({ value, label: jobs.spot.knowns[value] }))} onValue={(known) => set({ known })} />
        {form.known === "typed" && <AmountField label={jobs.spot.sprayed} units={unitsOf.tank} value={form.sprayed} error={errorAt(asked, "sprayed", form.sprayed)} onValue={(sprayed) => set({ sprayed })} />}
        {form.known === "plot" && <AmountField label={jobs.plan.mix} hint={jobs.spot.plotHint} units={unitsOf.mixPerArea} value={form.mix_per_area} error={errorAt(asked, "mix_per_area", form.mix_per_area)} onValue={(mix_per_area) => set({ mix_per_area })} />}
      </Section>
      {form.products.length > 0 && <SpotAnswerView asked={asked} />}
      <SaveBar saving={saving} label={form.known === "counted" && form.fills.length > 0 ? jobs.spot.saveFills : jobs.spot.save} disabled={plan === undefined} onSave={() => void save()} />
    </main>
  );
}

function requestOf(form: SpotForm, before: string, products: RequestOf<"spot">["products"]): RequestOf<"spot"> {
  const counted = form.known === "counted" ? addedUp([before, ...form.fills.map(() => form.fill)]) : form.sprayed;
  const fills = form.fill === "" ? [] : [form.fill];
  if (form.known === "plot") return { products, mix_per_area: form.mix_per_area, fills };
  // Nothing sprayed yet: amounts for a fill are known, the rate on the ground is not.
  return counted === "" || counted === undefined ? { products, fills } : { products, sprayed: counted, area: form.area, fills };
}

/** Each fill counted becomes a load of the job, with what was in it. */
function loadDrafts(job: string, form: SpotForm, already: number, fill: SpotFill | undefined): Draft[] {
  if (form.known !== "counted") return [];
  const amounts = (fill?.products ?? []).map(({ name = "", amount }) => ({ product: name, amount: (amount as Measure | undefined)?.text ?? "" }));
  return form.fills.map((ended_at, index): Draft<"load"> => ({ kind: "load", subject: newId(), body: { job, number: already + index + 1, mix: form.fill, carrier: show(fill?.carrier) || undefined, amounts, ended_at } }));
}

interface CounterProps {
  form: SpotForm;
  /** Mix of the fills that were saved before. */
  before: string;
  asked: Asked<"spot">;
  onCount: (count: number) => void;
}

/** On top, for the field: what is on the ground by the fills so far, what may still go on, and the tally. */
function FillCounter({ form, before, asked, onCount }: CounterProps): JSX.Element {
  const { jobs } = useWords();
  return (
    <section class="counter">
      <Findings of={asked.findings.filter(({ severity }) => severity === "stop")} />
      {(asked.answer?.products ?? []).map((product, index) => (
        <div key={index} class="figures">
          <Figure label={say(jobs.spot.hidden, product.name ?? "")} of={asked} value={strictestCap(product)?.delivered ?? (product.per_area_text || undefined)} />
          <Figure label={jobs.spot.capUsed} of={asked} value={sharePercent(strictestCap(product)?.share)} />
          <Figure label={jobs.spot.mixLeft} of={asked} value={product.mix_left} />
        </div>
      ))}
      <Tally count={form.fills.length} label={jobs.spot.fillsCounted} press={jobs.spot.oneMore} onCount={onCount} />
      {before !== "" && <p class="hint">{say(jobs.spot.before, before)}</p>}
    </section>
  );
}

/** The cap of the label that is nearest, with what stands against it. */
function strictestCap(product: SpotProduct): LimitCheck | undefined {
  const caps = (product.checks ?? []).filter(({ limit, share }) => share !== undefined && (limit === "max_single_rate" || limit === "max_yearly_rate"));
  return caps.sort((a, b) => (b.share ?? 0) - (a.share ?? 0))[0];
}

function SpotAnswerView({ asked }: { asked: Asked<"spot"> }): JSX.Element {
  const { jobs } = useWords();
  const answer = asked.answer;
  return (
    <section class="plan-answer">
      <h2 class="answer-title">{jobs.spot.answer}</h2>
      <RefusalNote of={asked.refusal} />
      <Findings of={asked.findings} />
      {answer && (
        <>
          <div class="figures">
            <Figure label={jobs.plan.mix} of={asked} value={answer.mix_per_area} />
          </div>
          {(answer.products ?? []).map((product, index) => (
            <Product key={index} product={product} asked={asked} />
          ))}
          <WorkingButton of={asked} title={jobs.spot.title} />
          {(answer.fills ?? []).map((fill, index) => (
            <FillTable key={index} fill={fill} />
          ))}
          <LimitChecks products={(answer.products ?? []).map(({ name, checks }) => ({ name, limits: checks }))} />
        </>
      )}
    </section>
  );
}

function Product({ product, asked }: { product: SpotProduct; asked: Asked<"spot"> }): JSX.Element {
  const { jobs } = useWords();
  const used = strictestCap(product);
  // The rate stands in the unit of the label when a limit was typed in it.
  const delivered = used?.delivered ?? product.per_area_text;
  return (
    <>
      <h3>{product.name}</h3>
      <div class="figures">
        <Figure label={jobs.spot.onGround} of={asked} value={delivered || undefined} size="main" />
        {used && <Figure label={jobs.spot.capUsed} of={asked} value={sharePercent(used.share)} note={say(jobs.plan.allowed, used.allowed ?? "")} />}
        <Figure label={jobs.spot.mixLeft} of={asked} value={product.mix_left} />
        <Figure label={jobs.spot.strongest} of={asked} value={product.strongest} />
        <Figure label={jobs.spot.used} of={asked} value={product.used_text || undefined} />
      </div>
    </>
  );
}

function FillTable({ fill }: { fill: SpotFill }): JSX.Element {
  const { jobs } = useWords();
  const rows: Array<[string, string]> = [
    ...(fill.products ?? []).map(({ name = "", amount }): [string, string] => [name, (amount as Measure | undefined)?.text ?? ""]),
    [jobs.plan.carrier, show(fill.carrier)],
    ...(fill.covers ? [[jobs.plan.covers, show(fill.covers)] as [string, string]] : []),
  ];
  return (
    <table class="table load">
      <caption>{say(jobs.spot.inFill, show(fill.fill))}</caption>
      <tbody>
        {rows.map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td class="number">{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
