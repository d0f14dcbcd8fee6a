// The flow of one tip over the life of a set of tips, as the core is asked for its trend.
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { Quantity } from "@/core/operations.gen";
import type { Sprayer, Thing } from "@/notebook/things";
import { dayOf } from "../known";

type WearRequest = RequestOf<"wear">;

interface Point {
  date: string;
  flow: Quantity;
  acres?: string | undefined;
  pressure?: Quantity | undefined;
  rated?: Quantity | undefined;
}

function pointOf(thing: Thing<"tip_set"> | Thing<"calibration">): Point[] {
  const { fields } = thing;
  const date = dayOf(thing);
  if (fields.operation === "tip-check") {
    const { mean, rated } = fields.answer ?? {};
    return mean === undefined ? [] : [{ date, flow: mean, acres: fields.acres_on_tips, pressure: fields.request?.pressure, rated }];
  }
  const flow = fields.answer?.flow_per_tip;
  return flow === undefined ? [] : [{ date, flow, acres: fields.acres_on_tips, pressure: fields.pressure || undefined }];
}

/** Checks and calibrations of the tips that are in now, oldest first. */
export function pointsOf(sprayer: Sprayer, all: Array<Thing<"tip_set"> | Thing<"calibration">>): Point[] {
  return all
    .flatMap(pointOf)
    .filter(({ date }) => sprayer.tips_since === undefined || date >= sprayer.tips_since)
    .sort((a, b) => a.date.localeCompare(b.date));
}

const plain = (quantity: Quantity): Quantity => (typeof quantity === "string" ? quantity : { value: quantity.value, unit: quantity.unit });

// Flow wears from the maker's rating, where one is known, else from the first time it was measured.
function beginning(sprayer: Sprayer, points: Point[]): Pick<WearRequest, "new_flow" | "rated_flow" | "reference_pressure"> {
  const withRating = [...points].reverse().find(({ rated }) => rated !== undefined);
  if (withRating?.rated) return { rated_flow: plain(withRating.rated), reference_pressure: withRating.pressure };
  if (sprayer.tip_rated_flow) return { rated_flow: sprayer.tip_rated_flow, reference_pressure: sprayer.tip_rated_pressure };
  const first = points[0];
  return first === undefined ? {} : { new_flow: plain(first.flow), reference_pressure: first.pressure };
}

/** The trend. Pressures count only when every point and the beginning has one, acres only when every point has them. */
export function askWear(sprayer: Sprayer, points: Point[]): Asked<"wear"> {
  const start = beginning(sprayer, points);
  const pressed = start.reference_pressure !== undefined && start.reference_pressure !== "" && points.every(({ pressure }) => pressure);
  const counted = points.every(({ acres }) => acres);
  return ask("wear", {
    ...start,
    reference_pressure: pressed ? start.reference_pressure : undefined,
    points: points.map(({ date, flow, acres, pressure }) => ({
      date,
      flow: plain(flow),
      acres_since_new: counted ? acres : undefined,
      pressure: pressed ? pressure : undefined,
    })),
  });
}
