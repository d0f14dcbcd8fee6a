// A planned load as steps to tick off at the mixing site, in the order that the plan gave.
import type { Load, LoadsAnswer, MeasureAdvice, OrderStep, ProductAmount, Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { say, type Words } from "@/words/words";

export interface MixStep {
  /** What is ticked; kept with the load. */
  key: string;
  /** Water, or the name of a product. */
  what: string;
  /** Big: the amount as it is measured. */
  amount?: string;
  note?: string;
}

type Measure = ProductAmount & { text?: string };

/** The amount for the notebook: exact, with its unit. */
export const amountText = (amount: ProductAmount | undefined): string => show(amount?.volume ?? amount?.mass);

const worded = (amount: ProductAmount | undefined): string => (amount as Measure | undefined)?.text || amountText(amount);

function productStep(load: Load, name: string, order: OrderStep | undefined, measuring: MeasureAdvice[], words: Words["fieldDay"]): MixStep {
  const amount = load.products?.find((product) => product.name === name)?.amount;
  const number = load.number ?? 1;
  const advice = measuring.find(({ product, first_load = 1, last_load = 1 }) => product === name && first_load <= number && number <= last_load);
  const big = worded(amount);
  const exact = amountText(amount);
  const { tool = "", text = "" } = advice?.best ?? {};
  const notes = [big === exact ? "" : say(words.exactly, exact), text && say(words.measure, tool, text), order?.text];
  return { key: `product ${name}`, what: name, amount: big, note: notes.filter(Boolean).join(". ").replaceAll("..", ".") };
}

export function stepsOf(load: Load, plan: LoadsAnswer, words: Words["fieldDay"]): MixStep[] {
  const measuring = plan.measuring ?? [];
  const names = (load.products ?? []).flatMap(({ name }) => (name ? [name] : []));
  const order = (plan.order ?? []).length > 0 ? (plan.order ?? []) : [{ products: names }];
  const steps: MixStep[] = [];
  const placed = new Set<string>();
  order.forEach((step, index) => {
    const mine = (step.products ?? []).filter((name) => names.includes(name) && !placed.has(name));
    mine.forEach((name) => {
      placed.add(name);
      steps.push(productStep(load, name, step, measuring, words));
    });
    if ((step.products ?? []).length === 0 && step.text) steps.push({ key: `step ${index + 1}`, what: step.text, amount: waterOf(step, load) });
  });
  for (const name of names) if (!placed.has(name)) steps.push(productStep(load, name, undefined, measuring, words));
  if (isSome(load.rinse_water)) steps.push({ key: "rinse", what: say(words.rinseWater, show(load.rinse_water)) });
  if (!steps.some(({ key }) => key.startsWith("step"))) steps.unshift({ key: "water", what: say(words.waterInAll, show(load.carrier)) });
  return steps;
}

const isSome = (quantity: Quantity | undefined): boolean => typeof quantity === "object" && quantity.value > 0;

// "50 to 75 %", "100 %": how full the tank is after this step.
function waterOf({ fill_low, fill_high }: OrderStep, load: Load): string | undefined {
  if (fill_low === undefined) return undefined;
  if (show(fill_low) === show(fill_high)) return show(load.fill);
  return `${show(fill_low)} – ${show(fill_high)}`;
}
