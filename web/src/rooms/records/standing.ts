// A record beside the rules: what to ask the core about it, and where it stands today.
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { ApplicationRecord, Thing } from "@/notebook/things";
import { today } from "@/words/words";
import { valuesNow } from "./amendments";

export type Values = Record<string, string>;
export type YesNo = "yes" | "no";

/** What decides which rules count, and when it was complete. Absent: nobody said. */
export type Facts = Pick<ApplicationRecord, "end_date" | "worker_protection" | "commodity" | "completed" | "completed_time">;
export type RecordBody = ApplicationRecord;
export type RecordThing = Thing<"record">;

const isClock = (text: string | undefined) => text !== undefined && /^([01]\d|2[0-3]):[0-5]\d$/.test(text);
export const isDay = (text: string | undefined): text is string => text !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(text);

/** "yes", "no" of a value that a person reads; undefined when it says neither. */
export function saysYes(text: string | undefined): boolean | undefined {
  if (text === undefined) return undefined;
  if (/^\s*(yes|s[ií])\b/i.test(text) || /^\s*sí/i.test(text)) return true;
  return /^\s*no\b/i.test(text) ? false : undefined;
}

const decided = (answer: YesNo | undefined) => (answer === undefined ? undefined : answer === "yes");

/** Fields that hold something: blank space is "not entered". */
export const entered = (values: Values | undefined): string[] =>
  Object.entries(values ?? {}).flatMap(([key, value]) => (typeof value === "string" && value.trim() !== "" ? [key] : []));

export function checkRequest(body: Omit<RecordBody, "name">, asOf = today()): RequestOf<"record-check"> {
  const values = body.values ?? {};
  const endTime = values["time_end"]?.trim();
  return {
    authorities: body.authorities ?? [],
    date: values["date"] ?? body.date ?? "",
    end_date: body.end_date,
    end_time: isClock(endTime) ? endTime : undefined,
    fields: entered(values),
    restricted_use: saysYes(values["rup_flag"]),
    worker_protection: decided(body.worker_protection),
    commodity: decided(body.commodity),
    completed: body.completed,
    completed_time: isClock(body.completed_time) ? body.completed_time : undefined,
    as_of: asOf,
  };
}

/** Judges a record; undefined while no authority or no day is named. */
export function check(body: Omit<RecordBody, "name">, asOf = today()): Asked<"record-check"> | undefined {
  const request = checkRequest(body, asOf);
  if (request.authorities.length === 0 || request.date === "") return undefined;
  return ask("record-check", request) as Asked<"record-check">;
}

/** Required fields that are absent, each once. */
export function missingKeys(asked: Asked<"record-check"> | undefined): string[] {
  const keys = (asked?.answer?.checks ?? []).flatMap(({ missing }) => (missing ?? []).map(({ key }) => key ?? ""));
  return [...new Set(keys)];
}

export type State = "open" | "closed" | "late";

export interface Standing {
  state: State;
  closed: boolean;
  late: boolean;
  missing: string[];
  asked?: Asked<"record-check">;
}

/** A record as it now stands, its corrections counted. */
export function standingOf(record: RecordThing, asOf = today()): Standing {
  const asked = check({ ...record.fields, values: valuesNow(record) }, asOf);
  const late = (asked?.answer?.checks ?? []).some(({ timeliness }) => timeliness === "late" || timeliness === "overdue");
  const closed = record.closed !== undefined;
  return { state: late ? "late" : closed ? "closed" : "open", closed, late, missing: missingKeys(asked), asked };
}

export const dayOf = (body: RecordBody): string => body.values?.["date"] ?? body.date ?? "";
