// The limits of a label, in the groups in which they are typed, and what each is made of.
import type { Form, Ingredient, LabelLimits } from "@/core/operations.gen";
import { unitsOf, type UnitChoice } from "@/parts/amount_field";

export type LimitName = Exclude<keyof LabelLimits, "other">;

/** How a limit is typed: an amount with a unit, a count, a droplet class, a wait with "until dry", or the label's words. */
export type LimitSort = "amount" | "count" | "droplets" | "reentry" | "words";

export interface LimitField {
  name: LimitName;
  sort: LimitSort;
  units?: UnitChoice;
}

const amount = (name: LimitName, units: UnitChoice): LimitField => ({ name, sort: "amount", units });
const wait = (name: LimitName): LimitField => amount(name, unitsOf.after);

export const groups = {
  rates: [
    amount("min_single_rate", unitsOf.rate),
    amount("max_single_rate", unitsOf.rate),
    amount("min_carrier", unitsOf.mixPerArea),
    amount("max_carrier", unitsOf.mixPerArea),
    amount("min_percent", { us: ["% v/v"], metric: ["% v/v"] }),
    amount("max_percent", { us: ["% v/v"], metric: ["% v/v"] }),
  ],
  caps: [amount("max_yearly_rate", unitsOf.rate), { name: "max_applications", sort: "count" }, amount("min_interval", { us: ["d", "h"], metric: ["d", "h"] })],
  weather: [
    amount("min_wind", unitsOf.wind),
    amount("max_wind", unitsOf.wind),
    { name: "finest_droplets", sort: "droplets" },
    { name: "coarsest_droplets", sort: "droplets" },
    amount("max_temperature", unitsOf.temperature),
    amount("max_boom_height", unitsOf.height),
    wait("rainfast"),
  ],
  waits: [{ name: "reentry", sort: "reentry" }, wait("grazing"), wait("dairy_grazing"), wait("haying"), wait("slaughter"), wait("harvest"), wait("replanting")],
  wear: [{ name: "protective_equipment", sort: "words" }],
} satisfies Record<string, LimitField[]>;

export const allLimits: LimitField[] = Object.values(groups).flat();

/** What the form holds of one limit; all of it as typed. */
export interface LimitText {
  value?: string;
  where?: string;
  until_dry?: boolean;
}

export interface IngredientText {
  name: string;
  /** Active ingredient, a.i., as typed. */
  active: string;
  /** Acid equivalent, a.e., as typed. */
  acid: string;
}

/** Strengths go by volume for what is poured and by weight for what is weighed. */
export function ingredientOf(form: Form, { name, active, acid }: IngredientText): Ingredient {
  const given = <Name extends string>(field: Name, value: string) => (value.trim() === "" ? {} : { [field]: value });
  return form === "dry" ? { name, ...given("part", active), ...given("acid_part", acid) } : { name, ...given("strength", active), ...given("acid_strength", acid) };
}

const text = (value: unknown): string => {
  if (typeof value === "object" && value !== null && "value" in value && "unit" in value) return `${String(value.value)} ${String(value.unit)}`;
  return typeof value === "string" || typeof value === "number" ? String(value) : "";
};

export function ingredientText({ name, strength, acid_strength, part, acid_part }: Ingredient): IngredientText {
  return { name, active: text(part ?? strength), acid: text(acid_part ?? acid_strength) };
}

/** One limit of a card as the form holds it. */
export function limitText(limits: LabelLimits | undefined, { name, sort }: LimitField): LimitText | undefined {
  const limit = limits?.[name] as { value?: unknown; after?: unknown; text?: string; until_dry?: boolean; where?: string } | undefined;
  if (limit === undefined) return undefined;
  const value = sort === "reentry" ? text(limit.after) : sort === "words" ? limit.text : text(limit.value);
  return { value, where: limit.where ?? "", until_dry: limit.until_dry };
}

/** The limits for the core: what was left blank is not there at all. */
export function limitsOf(typed: Partial<Record<LimitName, LimitText>>, other: LimitText[]): LabelLimits {
  const entries = allLimits.flatMap(({ name, sort }) => {
    const { value = "", where = "", until_dry } = typed[name] ?? {};
    const place = where.trim() === "" ? {} : { where: where.trim() };
    if (sort === "reentry") return value === "" && !until_dry ? [] : [[name, { ...(value === "" ? {} : { after: value }), ...(until_dry ? { until_dry } : {}), ...place }] as const];
    if (value.trim() === "") return [];
    if (sort === "words") return [[name, { text: value.trim(), ...place }] as const];
    if (sort === "count") return /^\d{1,4}$/.test(value.trim()) ? [[name, { value: Number(value.trim()), ...place }] as const] : [];
    return [[name, { value, ...place }] as const];
  });
  const more = other.filter(({ value }) => value?.trim()).map(({ value = "", where = "" }) => ({ text: value.trim(), ...(where.trim() === "" ? {} : { where: where.trim() }) }));
  return { ...(Object.fromEntries(entries) as LabelLimits), ...(more.length > 0 ? { other: more } : {}) };
}
