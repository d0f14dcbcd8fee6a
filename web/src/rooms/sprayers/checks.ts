// What the core has against an amount that stands beside a calibration: pressure, ground done, tank, flow.
// Each is asked within the plainest question that reads such an amount; an empty field is not wrong.
import { ask, type Refusal } from "@/core/core";

const at = (refusal: Refusal | undefined, field: string): string | undefined => (refusal?.field === field ? refusal.detail : undefined);
const isEmpty = (text: string | undefined): boolean => (text ?? "").trim() === "";

function wearOf(point: { pressure?: string; acres_since_new?: string; date?: string }, reference_pressure?: string): Refusal | undefined {
  return ask("wear", { points: [{ flow: "1 gal/min", ...point }], new_flow: "1 gal/min", reference_pressure }).refusal;
}

export const pressureProblem = (text: string | undefined): string | undefined =>
  isEmpty(text) ? undefined : at(wearOf({ date: "2031-05-14", pressure: text }, "40 psi"), "points[0].pressure");

export const groundProblem = (text: string | undefined): string | undefined => (isEmpty(text) ? undefined : at(wearOf({ acres_since_new: text }), "points[0].acres_since_new"));

export const flowProblem = (text: string | undefined): string | undefined =>
  isEmpty(text) ? undefined : at(ask("wear", { points: [{ flow: "1 gal/min", date: "2031-05-14" }], rated_flow: text }).refusal, "rated_flow");

export const volumeProblem = (text: string | undefined): string | undefined =>
  isEmpty(text) ? undefined : at(ask("calibrate", { method: "refill", area: "1 ac", refill: "1 gal", tank_volume: text }).refusal, "tank_volume");
