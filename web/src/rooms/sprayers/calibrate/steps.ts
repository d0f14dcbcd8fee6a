// The steps of each way of measuring, and which step a refused field stands in.
import type { Refusal } from "@/core/core";
import type { CalibrationForm } from "./calibration_form";

export type StepName = "begin" | "course" | "time" | "catch" | "refill" | "result";

export function stepsOf(form: CalibrationForm): StepName[] {
  if (form.way === "refill") return ["begin", "course", "refill", "result"];
  return ["begin", "course", "time", "catch", "result"];
}

const places: Record<string, StepName> = {
  sprayer: "begin",
  method: "begin",
  width: "course",
  wetted_width: "course",
  spacing: "course",
  band_width: "course",
  row_spacing: "course",
  course_length: "course",
  area: "course",
  speed: "course",
  tips: "catch",
  course_times: "time",
  catches: "catch",
  catch_covers: "begin",
  flow: "catch",
  refill: "refill",
  tank_volume: "refill",
  believed_output: "result",
  assumed: "result",
  hand: "result",
};

/** Where the field of a refusal is entered. */
export function stepOf(refusal: Refusal, form: CalibrationForm): StepName {
  const name = (refusal.field ?? "").split(/[.[]/)[0] ?? "";
  if (name === "tank_volume" && form.way !== "refill") return "result";
  return places[name] ?? "result";
}

const fieldNames: Record<string, keyof CalibrationForm> = {
  tank_volume: "tank",
  believed_output: "believed",
  "assumed.width": "assumed_width",
  "assumed.speed": "assumed_speed",
  "hand.output": "hand",
  "hand.speed": "hand_speed",
  "hand.flow": "hand_flow",
  "hand.width": "hand_width",
};

/** The sentence for a field, if the refusal is about it and something stands in it; an empty field is not wrong yet. */
export function problemAt(refusal: Refusal | undefined, form: CalibrationForm, field: keyof CalibrationForm): string | undefined {
  if (refusal?.field === undefined) return undefined;
  const name = fieldNames[refusal.field] ?? refusal.field;
  const value = form[field];
  return name === field && value !== "" && value !== null ? refusal.detail : undefined;
}
