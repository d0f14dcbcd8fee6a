// What the notebook knows of one sprayer. Things may come from another phone: no field is taken for granted.
import type { Asked, OperationName } from "@/core/core";
import { things } from "@/notebook/notebook";
import type { Calibration, Kept, Thing, TipSet } from "@/notebook/things";

export const dayOf = (thing: Thing<"calibration"> | Thing<"tip_set">): string => thing.fields.on ?? thing.created.slice(0, 10);

const newestFirst = (a: Thing<"calibration"> | Thing<"tip_set">, b: Thing<"calibration"> | Thing<"tip_set">): number =>
  dayOf(b).localeCompare(dayOf(a)) || b.created.localeCompare(a.created);

export const calibrationsOf = (sprayer: string): Array<Thing<"calibration">> =>
  things("calibration")
    .filter(({ fields }) => fields.sprayer === sprayer)
    .sort(newestFirst);

export const tipChecksOf = (sprayer: string): Array<Thing<"tip_set">> =>
  things("tip_set")
    .filter(({ fields }) => fields.sprayer === sprayer)
    .sort(newestFirst);

/** A kept answer as it was asked, so that a press on its number opens the working of that day. */
export function askedOf<K extends OperationName>(kept: Kept<K> | Calibration | TipSet | undefined): Asked<K> | undefined {
  if (kept?.answer === undefined || kept.request === undefined) return undefined;
  const { operation, request, answer } = kept as Kept<K>;
  const { findings, working } = answer as { findings?: Asked["findings"]; working?: Asked["working"] };
  return { operation, request, answer, findings: findings ?? [], working: working ?? [] };
}
