// A record while it is filled in, and the body of the entry it becomes.
import { model } from "@/core/version";
import { check, type Facts, type RecordBody, type Values } from "./standing";

export interface RecordDraft extends Facts {
  id: string;
  name: string;
  job?: string;
  authorities: string[];
  values: Values;
  /** Where each value is from; absent: typed here. */
  from: Values;
}

export const emptyDraft = (id: string): RecordDraft => ({ id, name: "", authorities: [], values: {}, from: {} });

const filled = (values: Values): Values => Object.fromEntries(Object.entries(values).filter(([, value]) => value.trim() !== ""));

/** Everything the draft holds, with the judgement of today beside it. */
export function bodyOf(draft: RecordDraft): RecordBody {
  const { id: _id, from, ...rest } = draft;
  const values = filled(draft.values);
  const kept = Object.fromEntries(Object.entries(from).filter(([key]) => key in values));
  const body: RecordBody = { ...rest, name: draft.name.trim(), values, value_from: kept, date: values["date"] };
  const asked = check(body);
  if (asked?.answer === undefined) return body;
  return { ...body, check: { name: body.name, operation: "record-check", request: asked.request, answer: asked.answer, model, on: asked.request.as_of } };
}

