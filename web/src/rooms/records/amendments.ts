// Corrections of a closed record. What was closed stays; a correction stands beside it with day and reason.
import type { RecordThing, Values } from "./standing";
import { labelOf } from "./tables";

export interface Change {
  key: string;
  label: string;
  before: string;
  after: string;
}

export interface AmendmentLine {
  at: string;
  author: string;
  date: string;
  reason: string;
  changes: Change[];
}

const valuesIn = (body: Record<string, unknown>): Values => {
  const { values } = body;
  if (typeof values !== "object" || values === null) return {};
  return Object.fromEntries(Object.entries(values).filter((pair): pair is [string, string] => typeof pair[1] === "string"));
};

/** Oldest first, each change beside what stood before it. */
export function amendmentsOf(record: RecordThing): AmendmentLine[] {
  const standing: Values = { ...record.fields.values };
  return (record.amendments ?? []).map(({ at, author, body }) => {
    const changes = Object.entries(valuesIn(body)).map(([key, after]) => ({ key, label: labelOf(key), before: standing[key] ?? "", after }));
    for (const { key, after } of changes) standing[key] = after;
    return { at, author, date: body.date, reason: body.reason, changes };
  });
}

/** The values as the record and its corrections now say. */
export function valuesNow(record: RecordThing): Values {
  const now: Values = { ...record.fields.values };
  for (const { changes } of amendmentsOf(record)) for (const { key, after } of changes) now[key] = after;
  return now;
}
