// What a day in the field takes from the notebook, and what it asks the core.
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { BalancePass, LabelRate, LoadsAnswer, Quantity, Load as PlannedLoad, SprayWindowRequest, WeatherLimits } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { things, type Draft } from "@/notebook/notebook";
import type { Job, JobProduct, Thing } from "@/notebook/things";
import { partsOf, type Fix } from "@/positions/fixes";
import { instant } from "@/words/words";

type Card = NonNullable<Thing<"product_card">["fields"]["card"]>;

/** The card of a product: of the notebook, or as it stood in the saved plan. */
function cardOf(job: Job, product: JobProduct): Card | undefined {
  const here = things("product_card").find(({ id }) => id === product.card_id)?.fields.card;
  if (here !== undefined) return here;
  const planned = (job.plan?.request as { products?: Array<{ card?: Card }> } | undefined)?.products ?? [];
  const name = (product as { name?: string }).name;
  return planned.find(({ card }) => card !== undefined && card.name === name)?.card;
}

/** The cards of a job; a product whose card is nowhere keeps its place, with no limit entered. */
function cardsOf(job: Job): Array<{ name: string; card?: Card }> {
  const products = Array.isArray(job.products) ? job.products : [];
  if (products.length > 0) {
    return products.map((product, index) => {
      const card = cardOf(job, product);
      return { name: card?.name ?? (product as { name?: string }).name ?? `${index + 1}`, card };
    });
  }
  const planned = (job.plan?.request as { products?: Array<{ card?: Card }> } | undefined)?.products ?? [];
  return planned.flatMap(({ card }) => (card === undefined ? [] : [{ name: card.name, card }]));
}

/** All limits of the weather: of every label of the job, and the job's own. None is ever left out. */
export function limitsOf(job: Job): WeatherLimits[] {
  const labels = cardsOf(job).map(({ name, card }): WeatherLimits => {
    const limits = card?.limits;
    return {
      name,
      max_wind: limits?.max_wind?.value,
      min_wind: limits?.min_wind?.value,
      max_temperature: limits?.max_temperature?.value,
      rainfast: limits?.rainfast?.value,
    };
  });
  return [...labels, ...(Array.isArray(job.limits) ? job.limits : [])];
}

/** Judges one reading at this moment. */
export function askWindow(reading: SprayWindowRequest["readings"][number], job: Job, rain = "", now = instant()): Asked<"spray-window"> {
  return ask("spray-window", { readings: [reading], limits: limitsOf(job), now, rain_expected: rain });
}

const ofJob = <T extends { job?: string }>(list: Array<{ fields: T }>, job: string) => list.filter(({ fields }) => fields.job === job);

// Of two in one second the one written later counts: the list comes with the newest change first.
export const newestFirst = (a: string, b: string): number => (a === b ? 0 : a < b ? 1 : -1);

export const readingsOf = (job: string): Array<Thing<"reading">> =>
  (ofJob(things("reading"), job) as Array<Thing<"reading">>).sort((a, b) => newestFirst(instantKey(a.fields.taken), instantKey(b.fields.taken)));

export const loadsOf = (job: string): Array<Thing<"load">> => (ofJob(things("load"), job) as Array<Thing<"load">>).sort((a, b) => b.fields.number - a.fields.number);

export const passesOf = (job: string): Array<Thing<"pass">> =>
  (ofJob(things("pass"), job) as Array<Thing<"pass">>).sort((a, b) => newestFirst(instantKey(a.fields.begun_at), instantKey(b.fields.begun_at)));

/** Instants of different zones compare as UTC. */
export function instantKey(at: string | undefined): string {
  const time = Date.parse(at ?? "");
  return Number.isNaN(time) ? "" : new Date(time).toISOString();
}

/** The loads of the saved plan. */
export function plannedLoads(job: Job): PlannedLoad[] {
  return job.plan?.operation === "loads" ? ((job.plan.answer as LoadsAnswer | undefined)?.loads ?? []) : [];
}

/** The load that is in the tank now: mixed and not ended. */
export const openLoad = (job: string): Thing<"load"> | undefined => loadsOf(job).find(({ fields }) => fields.mixed_at !== undefined && fields.ended_at === undefined);

/** The width that is sprayed: of the calibration that the job uses, else of its sprayer. */
export function widthOf(job: Job): string {
  const calibration = things("calibration").find(({ id }) => id === job.calibration)?.fields;
  const calibrated = show((calibration?.answer as { width?: Quantity } | undefined)?.width);
  return calibrated || (things("sprayer").find(({ id }) => id === job.sprayer)?.fields.width ?? "");
}

/** A recording as the core takes it: each part for itself, so that nothing is drawn over a gap. */
export function passesOfTrack(fixes: Fix[], width: string): BalancePass[] {
  return partsOf(fixes)
    .filter((part) => part.length > 1)
    .map((part, index) => ({ name: String(index + 1), width, track: part.map(({ part: _part, ...fix }) => fix) }));
}

/** A pass that is ended: what the core said of it then. */
export function passDone({ fields }: Thing<"pass">): BalancePass[] {
  const { swept_area, spray_time } = (fields.swept ?? {}) as { swept_area?: Quantity; spray_time?: Quantity };
  return swept_area === undefined ? [] : [{ name: fields.begun_at, area: show(swept_area), spray_time: show(spray_time) }];
}

export function askSwept(job: Job, passes: BalancePass[]): Asked<"balance"> | undefined {
  return passes.length === 0 ? undefined : ask("balance", { planned_area: job.net_area, passes });
}

interface MixLeft {
  /** What the ground swept so far asks for, and its products. */
  used?: Asked<"balance">;
  /** What of the loads should still be in the tank. */
  left?: Quantity;
  /** The ground asks for more than was loaded. */
  short: boolean;
}

const ratesOf = (job: Job): Array<{ name: string; rate: LabelRate }> => {
  const products = Array.isArray(job.products) ? job.products : [];
  return cardsOf(job).flatMap(({ name }, index) => {
    const rate = products[index]?.rate;
    return rate === undefined ? [] : [{ name, rate }];
  });
};

/** Mix and product for the ground swept, at the planned rates; and what the tank should still hold. */
export function mixLeft(job: Job, jobId: string, swept: Quantity | undefined): MixLeft {
  if (swept === undefined || !job.mix_per_area) return { short: false };
  const area = show(swept);
  const request: RequestOf<"balance"> = { planned_area: area, mix_per_area: job.mix_per_area, passes: [{ area }] };
  const withProducts = ask("balance", { ...request, products: ratesOf(job) });
  const used = withProducts.refusal === undefined ? withProducts : ask("balance", request);
  const loads = loadsOf(jobId).flatMap(({ fields }) => (fields.mix ? [{ mix: fields.mix }] : []));
  if (loads.length === 0) return { used, short: false };
  // Loads less what is left is what was used; put in what the ground asks for, and it is what is left.
  const left = ask("balance", { ...request, loads, leftover: show(used.answer?.mix?.expected) });
  return { used, left: left.answer?.mix?.by_loads, short: left.refusal?.field === "leftover" };
}

const isWeight = (amount: string) => /(\blb|\bg|\bkg|oz wt|\bt)\s*$/.test(amount);

/** The whole day against the plan: loads, what is left, ground swept. */
export function askClosing(job: Job, jobId: string): Asked<"balance"> | undefined {
  const passes = passesOf(jobId).flatMap(passDone);
  const loads = [...loadsOf(jobId)].reverse();
  if (passes.length === 0 || loads.length === 0) return askSwept(job, passes);
  const request: RequestOf<"balance"> = {
    planned_area: job.net_area,
    mix_per_area: job.mix_per_area,
    passes,
    leftover: loads.at(-1)?.fields.left_over,
    loads: loads.map(({ fields }) => ({
      mix: fields.mix,
      carrier: fields.carrier,
      products: (fields.amounts ?? []).map(({ product, amount }) => (isWeight(amount) ? { name: product, weight: amount } : { name: product, amount })),
    })),
  };
  const whole = ask("balance", { ...request, products: ratesOf(job) });
  return whole.refusal === undefined ? whole : ask("balance", request);
}

/** The first act in the field sets a planned job under way. */
export function underWay(job: Thing<"job">): Array<Draft<"job">> {
  return job.fields.state === "planned" ? [{ kind: "job", subject: job.id, body: { state: "under_way" } }] : [];
}
