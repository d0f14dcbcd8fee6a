// A tip check as the core is asked for it: from a form of its own, or from the catches of a calibration.
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { TipLimitRule } from "@/core/operations.gen";
import type { Sprayer } from "@/notebook/things";
import { byTip, catchesOf, tipCount, type CalibrationForm } from "../calibrate/calibration_form";

type TipRequest = RequestOf<"tip-check">;

export type RuleChoice = "usual" | Extract<TipLimitRule, "rating_10" | "rating_5" | "mean_5" | "mean_10">;

interface Rating {
  size?: string;
  rated_flow?: string;
  rated_pressure?: string;
}

/** The size counts when it is entered, else the flow of the maker's table. */
export function ratingOf({ size, rated_flow, rated_pressure }: Rating, pressure: string | undefined): TipRequest {
  if (size) return { size, pressure };
  return rated_flow ? { rated_flow, rated_pressure, pressure } : {};
}

/** The tips as a calibration caught them: the first round, when every tip was caught. */
export function tipsFromCatches(form: CalibrationForm, sprayer: Sprayer, ground: Asked<"calibrate">): Asked<"tip-check"> | undefined {
  const tips = tipCount(form.tips);
  if (!byTip(form, sprayer.sort) || form.way === "refill" || tips === undefined || tips < 2) return undefined;
  const first = { ...form, caught: form.caught.slice(0, tips) };
  const { catches, places } = catchesOf(first, sprayer.sort);
  if (places.length < tips) return undefined;
  const rating = { size: sprayer.tip_size, rated_flow: sprayer.tip_rated_flow, rated_pressure: sprayer.tip_rated_pressure };
  const rated = ratingOf(rating, form.pressure || undefined);
  const caught = {
    catches: catches.map(({ amount, time }) => ({ volume: amount, time })),
    catch_time: form.way === "flow_and_speed" || form.catch_seconds === "typed" ? undefined : ground.answer?.mean_course_time,
  };
  const asked = ask("tip-check", { ...caught, ...rated });
  // A size that the core cannot read must not hide how the tips compare with each other.
  return asked.answer ? asked : ask("tip-check", caught);
}
