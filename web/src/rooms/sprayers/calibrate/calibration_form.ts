// A calibration half done: all that was typed and clocked, as it is kept on disk at every key press, and
// the request it stands for.
import type { AnswerOf, RequestOf } from "@/core/core";
import { ask, type Asked } from "@/core/core";
import type { CalibrationMethod, CatchCovers, SprayerKind } from "@/core/operations.gen";
import { measured } from "@/core/quantity";
import type { Sprayer } from "@/notebook/things";
import type { Countdown } from "@/parts/catch_timer";
import { isByHand } from "../sorts";

export interface CalibrationForm {
  way: CalibrationMethod;
  covers: CatchCovers;
  width: string;
  wetted_width: string;
  spacing: string;
  band_width: string;
  row_spacing: string;
  tips: string;
  ground: "length" | "area";
  course_length: string;
  area: string;
  guess_speed: string;
  speed_from: "clock" | "meter";
  speed: string;
  times: string[];
  typed_time: string;
  /** The instant the running pass began. */
  running: number | null;
  catch_seconds: "course" | "typed";
  catch_time: string;
  countdown: Countdown | null;
  flow_from: "catch" | "meter";
  flow: string;
  caught_unit: string;
  /** Digits as typed, one for each tip (round after round) or for each catch; empty: skipped. */
  caught: string[];
  /** Which of them is being entered. */
  at: number;
  rounds: number;
  refill: string;
  tank: string;
  pressure: string;
  operator: string;
  acres_on_tips: string;
  target: "5" | "10" | "15";
  believed: string;
  assumed_width: string;
  assumed_speed: string;
  hand: string;
  hand_speed: string;
  hand_flow: string;
  hand_width: string;
  /** The remarks that were read and ticked. */
  agreed: string;
}

export type SetForm = (change: Partial<CalibrationForm> | ((before: CalibrationForm) => CalibrationForm)) => void;

/** What an untouched form holds: the sprayer as it is known. */
export function firstForm(sprayer: Sprayer, units: "us" | "metric"): CalibrationForm {
  const byHand = isByHand(sprayer.sort);
  const together = byHand || sprayer.sort === "boomless";
  return {
    way: byHand ? "timed_plot" : "course_and_catch",
    covers: together ? "all_tips" : "one_tip",
    width: sprayer.width ?? "",
    wetted_width: sprayer.width ? "" : (sprayer.wetted_width ?? ""),
    spacing: sprayer.spacing ?? "",
    band_width: sprayer.band_width ?? "",
    row_spacing: sprayer.row_spacing ?? "",
    tips: sprayer.tips === undefined ? "" : String(sprayer.tips),
    ground: "length",
    course_length: "",
    area: "",
    guess_speed: "",
    speed_from: "clock",
    speed: "",
    times: [],
    typed_time: "",
    running: null,
    catch_seconds: "course",
    catch_time: "",
    countdown: null,
    flow_from: "catch",
    flow: "",
    caught_unit: units === "us" ? "fl oz" : "mL",
    caught: [],
    at: 0,
    rounds: 1,
    refill: "",
    tank: sprayer.tank ?? "",
    pressure: sprayer.pressure ?? "",
    operator: "",
    acres_on_tips: "",
    target: "5",
    believed: "",
    assumed_width: "",
    assumed_speed: "",
    hand: "",
    hand_speed: "",
    hand_flow: "",
    hand_width: "",
    agreed: "",
  };
}

export const tipCount = (text: string): number | undefined => (/^[1-9]\d{0,2}$/.test(text.trim()) ? Number(text) : undefined);

export type CalibrateRequest = RequestOf<"calibrate">;

/** Ground and clock of the request: what every way but the catch needs. */
function groundOf(form: CalibrationForm, sort: SprayerKind | undefined): CalibrateRequest {
  const byArea = form.ground === "area" && canHaveArea(form.way);
  const clocked = form.way !== "refill" && (form.way !== "flow_and_speed" || form.speed_from === "clock");
  return {
    sprayer: sort,
    method: form.way,
    ...(byArea ? { area: form.area } : widthsOf(form, sort)),
    course_length: byArea || (form.way === "flow_and_speed" && !clocked) ? undefined : form.course_length,
    course_times: clocked ? form.times : undefined,
    speed: form.way === "flow_and_speed" && !clocked ? form.speed : undefined,
    tips: isByHand(sort) ? undefined : tipCount(form.tips),
    tank_volume: form.tank,
  };
}

function widthsOf(form: CalibrationForm, sort: SprayerKind | undefined): CalibrateRequest {
  if (sort === "band") return { band_width: form.band_width, row_spacing: form.row_spacing };
  return { width: form.width, wetted_width: sort === "boomless" ? form.wetted_width : undefined, spacing: sort === "boom" ? form.spacing : undefined };
}

export const canHaveArea = (way: CalibrationMethod): boolean => way === "refill" || way === "timed_plot";

/** Whether the entries stand for single tips. */
export const byTip = (form: CalibrationForm, sort: SprayerKind | undefined): boolean => !isByHand(sort) && form.covers === "one_tip";

export const needsCatch = (form: CalibrationForm): boolean => form.way !== "refill" && !(form.way === "flow_and_speed" && form.flow_from === "meter");

/** The catches of the request, with the place of each in the form. */
export function catchesOf(form: CalibrationForm, sort: SprayerKind | undefined): { catches: NonNullable<CalibrateRequest["catches"]>; places: number[] } {
  const places = form.caught.flatMap((digits, index) => (digits.trim() === "" ? [] : [index]));
  const tips = tipCount(form.tips) ?? form.caught.length;
  const time = form.catch_seconds === "typed" || form.way === "flow_and_speed" ? form.catch_time : undefined;
  const catches = places.map((index) => ({
    amount: `${form.caught[index] ?? ""} ${form.caught_unit}`,
    time,
    tip: byTip(form, sort) ? String((index % tips) + 1) : undefined,
  }));
  return { catches, places };
}

/** The whole request. */
export function requestOf(form: CalibrationForm, sort: SprayerKind | undefined): CalibrateRequest {
  const metered = form.way === "flow_and_speed" && form.flow_from === "meter";
  const { catches } = catchesOf(form, sort);
  return {
    ...groundOf(form, sort),
    catches: needsCatch(form) ? catches : undefined,
    catch_covers: form.way === "refill" ? undefined : metered ? "all_tips" : form.covers,
    flow: metered ? form.flow : undefined,
    refill: form.way === "refill" ? form.refill : undefined,
    believed_output: form.believed,
    assumed: { width: form.assumed_width, speed: form.assumed_speed },
    hand: form.hand === "" ? undefined : { output: form.hand, speed: form.hand_speed, flow: form.hand_flow, width: form.hand_width },
  };
}

/** Ground and clock alone, before anything was caught: a stand-in catch of a gallon lets the core read them. */
export function askGround(form: CalibrationForm, sort: SprayerKind | undefined): Asked<"calibrate"> {
  const ground = groundOf(form, sort);
  const standIn: CalibrateRequest =
    form.way === "refill"
      ? { refill: "1 gal" }
      : form.way === "flow_and_speed"
        ? { flow: "1 gal/min", catch_covers: "all_tips" }
        : { catches: [{ amount: "1 gal" }], catch_covers: "all_tips" };
  const asked = ask("calibrate", { ...ground, ...standIn });
  const speed = measured(asked.answer?.speed);
  // Only the step of the speed is about what was measured so far.
  const working = speed === undefined ? [] : asked.working.slice(0, 1);
  return { ...asked, request: ground, working, findings: [] };
}

// A plot by the clock is the plainest question that has a time in it.
const askTime = (time: string): Asked<"calibrate"> =>
  ask("calibrate", { method: "timed_plot", area: "1000 ft2", course_times: [time], catches: [{ amount: "1 gal" }], catch_covers: "all_tips" });

/** Seconds of a time as the core reads it; undefined when it cannot. */
export const secondsOf = (time: string): number | undefined => (time.trim() === "" ? undefined : measured(askTime(time).answer?.mean_course_time)?.value);

/** What the core has against a time. */
export const timeProblem = (time: string): string | undefined => (time.trim() === "" ? undefined : askTime(time).refusal?.detail);

export const outputOf = (asked: Asked<"calibrate">): AnswerOf<"calibrate">["output"] => asked.answer?.output;
