// When a calibration should be done again.
import type { Sprayer } from "@/notebook/things";
import { daysBetween } from "./days";

export const usualDays = 365;

export type Due = "age" | "tips" | undefined;

/** Whether a calibration should be done again: too old, or tips changed since. */
export function dueOf(sprayer: Pick<Sprayer, "tips_since" | "calibrate_after_days">, lastDay: string | undefined, now: string): Due {
  if (lastDay === undefined) return undefined;
  if (sprayer.tips_since !== undefined && sprayer.tips_since > lastDay) return "tips";
  const after = sprayer.calibrate_after_days ?? usualDays;
  const days = daysBetween(lastDay, now);
  return after > 0 && days !== undefined && days > after ? "age" : undefined;
}
