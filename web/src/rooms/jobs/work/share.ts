import { settings } from "@/app/settings";
import { unitsOf, type UnitChoice } from "@/parts/amount_field";

/** Rates of spot work: percent first. */
export const percentRates: UnitChoice = {
  us: ["% v/v", ...unitsOf.rate.us.filter((unit) => unit !== "% v/v"), "fl oz/gal"],
  metric: ["% v/v", ...unitsOf.rate.metric.filter((unit) => unit !== "% v/v"), "mL/L"],
};

/** A share of a limit as people read it: 0.96 is 96 %. */
export function sharePercent(share: number | undefined): string | undefined {
  if (share === undefined) return undefined;
  const text = new Intl.NumberFormat(settings.now().language, { style: "percent", maximumSignificantDigits: 4 }).format(share);
  return text.replace(/\s*%$/, " %");
}
