// What a job takes from other things of the notebook, and how its form becomes a request. The notebook
// may hold things made on another phone by another version: every field may be missing.
import { ask, type Asked, type OperationName, type RequestOf } from "@/core/core";
import { show } from "@/core/quantity";
import { model } from "@/core/version";
import type { Counts, LabelRate, LoadsAnswer, MeasuringTool, OrderConvention, ProductCard, ProductAmount, Quantity, Split, TankProduct } from "@/core/operations.gen";
import type { Job, JobProduct, Kept, Thing, WorkKind } from "@/notebook/things";
import { say, today, type Words } from "@/words/words";

/** Amounts of product come with the words that a person measures by. */
export type Measure = ProductAmount & { text?: string };

/** An amount of an answer as a form takes it: four digits, as it stands on the screen. */
export const asTyped = (quantity: Quantity | undefined): string => show(quantity);

export const rateText = (rate: LabelRate | undefined): string => (typeof rate === "object" ? `${rate.value} ${rate.unit}` : (rate ?? ""));

/** The kind of work; broadcast when the job does not say, or says something this version does not know. */
export const workOf = ({ work }: Job): WorkKind => (work === "spot" || work === "stems" ? work : "broadcast");

/** True when the job's ground or mix was changed after its plan was saved. */
export function isOlderThanJob({ plan, net_area, mix_per_area }: Job): boolean {
  if (plan?.operation !== "loads") return false;
  const request = plan.request as RequestOf<"loads">;
  return asTyped(request.net_area ?? request.planned_area) !== (net_area ?? "") || asTyped(request.mix_per_area) !== (mix_per_area ?? "");
}

/** Area of a stand: from its map, or as it was typed. */
export function areaOfStand(stand: Thing<"stand"> | undefined): string {
  const answer = stand?.fields.answer as { area?: Quantity } | undefined;
  return answer?.area === undefined ? (stand?.fields.typed_area ?? "") : asTyped(answer.area);
}

const dayOf = (kept: Thing<"calibration">): string => kept.fields.on ?? kept.created;

/** Calibrations that fit, newest first. */
export function calibrationsOf(all: Array<Thing<"calibration">>, fits: (kept: Thing<"calibration">) => boolean): Array<Thing<"calibration">> {
  return all.filter((kept) => fits(kept) && kept.fields.answer?.output !== undefined).sort((a, b) => (dayOf(a) < dayOf(b) ? 1 : -1));
}

/** What the form of a plan holds; all of it as typed. */
export interface PlanForm {
  net_area: string;
  mix_per_area: string;
  calibration?: string;
  tank_usable: string;
  dead_volume: string;
  split: Split;
  /** Only bands over the rows are sprayed: the area is that of the whole field then. */
  banded: boolean;
  band_width: string;
  row_spacing: string;
  mix_counts?: Counts;
  order: OrderConvention;
  products: JobProduct[];
  measures: MeasuringTool[];
}

export function planOf(job: Job): PlanForm {
  return {
    net_area: job.net_area ?? "",
    mix_per_area: job.mix_per_area ?? "",
    calibration: job.calibration,
    tank_usable: job.tank_usable ?? "",
    dead_volume: job.dead_volume ?? "",
    split: job.split ?? "equal",
    banded: job.bands !== undefined && job.bands !== null,
    band_width: asTyped(job.bands?.band_width),
    row_spacing: asTyped(job.bands?.row_spacing),
    mix_counts: job.mix_counts,
    order: job.order ?? "dry_suspension_solution_emulsion",
    products: Array.isArray(job.products) ? job.products : [],
    measures: Array.isArray(job.measures) ? job.measures : [],
  };
}

/** Cards by id; the cards of the saved plan stand in for those that are not on this phone. */
export function cardsOf(cards: Array<Thing<"product_card">>, job: Job | undefined): (product: JobProduct) => ProductCard | undefined {
  const planned = (job?.plan?.request as { products?: Array<{ card?: ProductCard }> } | undefined)?.products ?? [];
  return (product) => {
    const here = cards.find(({ id }) => id === product.card_id)?.fields.card;
    return here ?? planned.find(({ card }) => card !== undefined && card.name === product.name)?.card;
  };
}

/** The products as the core takes them; one without a card is left out. */
export function tankProducts(products: JobProduct[], cardOf: (product: JobProduct) => ProductCard | undefined): TankProduct[] {
  return products.flatMap((product) => {
    const card = cardOf(product);
    if (card === undefined) return [];
    const { card_id: _id, name: _name, ...rest } = product;
    return [{ ...rest, card }];
  });
}

export function loadsRequest(plan: PlanForm, products: TankProduct[]): RequestOf<"loads"> {
  const { net_area, mix_per_area, tank_usable, dead_volume, split, order, measures, banded, band_width, row_spacing, mix_counts } = plan;
  const label_order = order === "as_label" ? products.map(({ card }) => card.name) : [];
  const ground = banded ? { planned_area: net_area, bands: { band_width, row_spacing }, mix_counts } : { net_area };
  // Which ground a rate counts is a question only where bands are sprayed.
  const counted = banded ? products : products.map(({ counts: _counts, ...rest }) => rest);
  return { ...ground, mix_per_area, tank_usable, dead_volume, split, products: counted, tools: measures.filter(isComplete), order, label_order };
}

// A jug that is still being typed must not take the loads off the screen.
function isComplete({ name, marks, step, holds, weight_step, weight_holds }: MeasuringTool): boolean {
  const measures = (marks?.length ?? 0) > 0 || (Boolean(step) && Boolean(holds)) || (Boolean(weight_step) && Boolean(weight_holds));
  return (name ?? "").trim() !== "" && measures;
}

/** The plan in one line, for the foot of a form. */
export function liveLine(jobs: Words["jobs"], answer: LoadsAnswer | undefined): string | undefined {
  if (answer?.load_count === undefined) return undefined;
  return say(jobs.plan.live, show(answer.total_mix), answer.load_count, show(answer.loads?.[0]?.fill));
}

/** An answer to keep, with all it was made from. */
export function keep<K extends OperationName>(name: string, asked: Asked<K>): Kept<K> | undefined {
  if (asked.answer === undefined) return undefined;
  // The core takes what the form held; blanks and options of the app are not part of the request.
  return { name, operation: asked.operation, request: asked.request, answer: asked.answer, model, on: today() } as Kept<K>;
}

/** The core's sentence for one field, once something was typed there. */
export function errorAt(asked: Asked | undefined, field: string, typed: unknown): string | undefined {
  if (asked?.refusal?.field !== field || typed === undefined || typed === "") return undefined;
  return asked.refusal.detail;
}

/** A count as typed; nothing when it is not one. */
export function whole(text: string): number | undefined {
  return /^\d{1,7}$/.test(text.trim()) ? Number(text.trim()) : undefined;
}

/** Amounts of liquid put together by the core, four at a time as it adds them. Undefined when one cannot be read. */
export function addedUp(amounts: string[]): string | undefined {
  const given = amounts.filter((amount) => amount.trim() !== "");
  if (given.length === 0) return "";
  const sums: string[] = [];
  for (let at = 0; at < given.length; at += 4) {
    const total = ask("loads", { mix_volume: given.slice(at, at + 4).join(" + "), products: [{ card: { name: "mix" }, rate: "1 % v/v" }] }).answer?.total_mix;
    if (typeof total !== "object") return undefined;
    sums.push(`${total.value} ${total.unit}`);
  }
  return sums.length === 1 ? sums[0] : addedUp(sums);
}
