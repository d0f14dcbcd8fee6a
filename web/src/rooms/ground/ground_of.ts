// From outlines to stands: what the core is asked, and what is written down.
import { ask, type Asked } from "@/core/core";
import { model } from "@/core/version";
import type { GeoJson, Quantity } from "@/core/operations.gen";
import { measured, showNumber, showUnit } from "@/core/quantity";
import type { Draft } from "@/notebook/notebook";
import { newId, things } from "@/notebook/notebook";
import type { Stand } from "@/notebook/things";
import { roughMetres, type Place } from "@/positions/nearness";
import { say, today, wordsNow } from "@/words/words";
import { swapped, type Shape } from "./files/shapes";

/** What the core is asked about an outline; an error entered as text, 95 % of positions nearer. */
export function askArea(boundary: Shape["boundary"], positionError = "", edgeOffset = ""): Asked<"area"> {
  return ask("area", {
    geometry: boundary as GeoJson,
    position_error: positionError,
    position_error_means: positionError === "" ? undefined : "radial_95",
    edge_offset: edgeOffset,
  });
}

/** "7.4 ac (7.27–7.53)": the area with the two ends of its interval. */
export function withSpread(area: Quantity | undefined): string {
  const amount = measured(area);
  if (amount === undefined) return "";
  const text = `${showNumber(amount.value)} ${showUnit(amount.unit)}`;
  if (amount.low === undefined || amount.high === undefined) return text;
  return `${text} (${showNumber(amount.low, 3)}–${showNumber(amount.high, 3)})`;
}

export interface StandWords {
  name: string;
  landowner?: string;
  place?: string;
  notes?: string;
}

/** The entry of a stand with an outline, with the answer it was saved with. */
export function standDraft(words: StandWords, how: Stand["how"], boundary: Shape["boundary"], asked: Asked<"area">, positionError: string): Draft<"stand"> {
  return {
    kind: "stand",
    subject: newId(),
    body: {
      ...words,
      how,
      boundary,
      position_error: positionError === "" ? undefined : positionError,
      operation: "area",
      request: asked.request,
      answer: asked.answer,
      model,
      on: today(),
    },
  };
}

function firstPlace(boundary: Shape["boundary"] | Stand["boundary"]): Place | undefined {
  let inner: unknown = boundary?.coordinates;
  while (Array.isArray(inner) && Array.isArray(inner[0])) inner = inner[0];
  const [lon, lat] = Array.isArray(inner) ? (inner as number[]) : [];
  return lon === undefined || lat === undefined ? undefined : { lon, lat };
}

// As the sentence says it.
const farMetres = 200_000;

/** A sentence when an outline lies far from every other stand of the notebook. */
export function farWarning(boundary: Shape["boundary"]): string | undefined {
  const here = firstPlace(boundary);
  if (here === undefined) return undefined;
  let nearest: { name: string; metres: number } | undefined;
  for (const { fields } of things("stand")) {
    const place = firstPlace(fields.boundary);
    if (place === undefined) continue;
    const metres = roughMetres(here, place);
    if (nearest === undefined || metres < nearest.metres) nearest = { name: fields.name, metres };
  }
  if (nearest === undefined || nearest.metres < farMetres) return undefined;
  return say(wordsNow().ground.far, nearest.name);
}

/** True when the core refuses the outline as it is and takes it with the two numbers the other way round. */
export function looksSwapped(shape: Shape, asked: Asked<"area">): boolean {
  return asked.refusal !== undefined && askArea(swapped(shape).boundary).refusal === undefined;
}
