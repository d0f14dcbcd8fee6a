// The order of a packet: everything the printing side needs, as one JSON text. `swathbook packet` writes
// the same form. Requests travel as they were asked; the sheets are worked out from them by the core.
import type { Settings } from "@/app/settings";
import { withoutBlanks } from "@/core/core";
import { model } from "@/core/version";
import { deviceId } from "@/notebook/notebook";
import type { ApplicationRecord, Kind, Thing } from "@/notebook/things";

export type PaperSize = "letter" | "a4";

export interface Part {
  file: string;
  name: string;
  operation: "area" | "calibrate" | "tip-check" | "crew" | "loads" | "record-check";
  /** JSON as the operation takes it. */
  request: string;
}

export interface JobText {
  name: string;
  place: string;
  customer: string;
  target: string;
  planned_for: string;
  operator_name: string;
  licence: string;
  supervised: string;
}

export interface PacketOrder {
  sheet: "packet";
  job: Partial<JobText>;
  record_values: Record<string, string>;
  parts: Part[];
  language: "en" | "es";
  paper: PaperSize;
  units: "us" | "metric";
  printed_at: string;
  notebook: string;
  model_version: string;
}

export interface WorksheetOrder {
  sheet: "worksheet";
  language: "en" | "es";
  paper: PaperSize;
  units: "us" | "metric";
  tips: number;
  model_version: string;
}

export type Order = PacketOrder | WorksheetOrder;

/** What a packet holds before language, units and paper are said. */
export type Packet = Pick<PacketOrder, "job" | "record_values" | "parts">;

/** The parts of the notebook a packet is made from. */
export interface Shelf {
  things<K extends Kind>(kind: K): Array<Thing<K>>;
}

/** As the program names itself on paper. */
const program = model.replace("swathbook", "Swathbook");

const printable = ["area", "calibrate", "tip-check", "crew", "loads", "record-check"];

class Parts {
  readonly list: Part[] = [];

  add(name: string, operation: string | undefined, request: object | undefined): void {
    if (operation === undefined || request === undefined || !printable.includes(operation)) return;
    const number = String(this.list.length + 1).padStart(2, "0");
    this.list.push({ file: `${number}-${operation}.json`, name, operation: operation as Part["operation"], request: JSON.stringify(withoutBlanks(request)) });
  }
}

const find = <K extends Kind>(shelf: Shelf, kind: K, id: string | undefined): Thing<K> | undefined => (id === undefined ? undefined : shelf.things(kind).find((each) => each.id === id));

/** Everything about a job: its ground, sprayer, tips, loads and its newest record. */
export function jobPacket(shelf: Shelf, id: string): Packet | undefined {
  const job = find(shelf, "job", id);
  if (job === undefined) return undefined;
  const parts = new Parts();
  const { stand, sprayer, calibration, plan, name } = job.fields;
  const ground = find(shelf, "stand", stand);
  if (ground?.fields.operation === "area") parts.add(ground.fields.name, "area", ground.fields.request);
  const ofSprayer = <K extends "calibration" | "tip_set">(kind: K) => shelf.things(kind).find(({ fields }) => sprayer !== undefined && (fields as { sprayer?: string }).sprayer === sprayer);
  const calibrated = find(shelf, "calibration", calibration) ?? ofSprayer("calibration");
  if (calibrated) parts.add(calibrated.fields.name, calibrated.fields.operation, calibrated.fields.request);
  const tips = ofSprayer("tip_set");
  if (tips) parts.add(tips.fields.name, tips.fields.operation, tips.fields.request);
  parts.add(plan?.name ?? name, plan?.operation, plan?.request);
  const record = shelf.things("record").find(({ fields }) => fields.job === id);
  if (record) addRecord(parts, record);
  return { job: jobText(shelf, job), record_values: record ? valuesOf(record) : {}, parts: parts.list };
}

/** One record: its form with the values and what each authority wants. */
export function recordPacket(shelf: Shelf, id: string): Packet | undefined {
  const record = find(shelf, "record", id);
  if (record === undefined) return undefined;
  const parts = new Parts();
  addRecord(parts, record);
  const job = find(shelf, "job", record.fields.job);
  const values = valuesOf(record);
  const own = { name: record.fields.name, place: values["location_text"] ?? "", customer: values["customer_name"] ?? "", planned_for: values["date"] ?? "" };
  return { job: job ? jobText(shelf, job) : own, record_values: values, parts: parts.list };
}

/** One calibration, with the tips of the same sprayer when they were checked. */
export function calibrationPacket(shelf: Shelf, id: string): Packet | undefined {
  const calibration = find(shelf, "calibration", id);
  if (calibration === undefined) return undefined;
  const parts = new Parts();
  const { name, operation, request, sprayer, operator } = calibration.fields;
  parts.add(name, operation, request);
  const tips = shelf.things("tip_set").find(({ fields }) => fields.sprayer === sprayer);
  if (tips) parts.add(tips.fields.name, tips.fields.operation, tips.fields.request);
  const person = find(shelf, "operator", operator);
  return { job: { name: find(shelf, "sprayer", sprayer)?.fields.name ?? name, operator_name: person?.fields.name ?? "", licence: person?.fields.licence ?? "" }, record_values: {}, parts: parts.list };
}

// The judgement of the day it was kept, on the fields as they now stand.
function addRecord(parts: Parts, record: Thing<"record">): void {
  const { name, check } = record.fields;
  if (check) parts.add(name, "record-check", { ...check.request, fields: Object.keys(valuesOf(record)) });
}

/** The values of a record as they now stand: what was closed, with its corrections. */
function valuesOf({ fields, amendments }: Thing<"record">): Record<string, string> {
  const values = { ...(fields as ApplicationRecord).values };
  for (const { body } of amendments ?? []) Object.assign(values, (body["values"] ?? {}) as Record<string, string>);
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== ""));
}

function jobText(shelf: Shelf, { fields }: Thing<"job">): JobText {
  const stand = find(shelf, "stand", fields.stand);
  const people = (fields.operators ?? []).flatMap((id) => find(shelf, "operator", id) ?? []);
  const licensed = people.find((person) => (person.fields.licence ?? "") !== "") ?? people[0];
  const others = people.filter((person) => person !== licensed);
  return {
    name: fields.name,
    place: [stand?.fields.name, stand?.fields.place].filter(Boolean).join(", "),
    customer: fields.customer ?? "",
    target: fields.target ?? "",
    planned_for: fields.planned_for ?? "",
    operator_name: licensed?.fields.name ?? "",
    licence: licensed?.fields.licence ?? "",
    supervised: others.map((person) => person.fields.name).join(", "),
  };
}

export function orderOf(packet: Packet, { language, units }: Pick<Settings, "language" | "units">, paper: PaperSize, printedAt = new Date()): PacketOrder {
  return { sheet: "packet", ...packet, language, paper, units, printed_at: `${printedAt.toISOString().slice(0, 19)}Z`, notebook: deviceId(), model_version: program };
}

export function worksheetOrder({ language, units }: Pick<Settings, "language" | "units">, paper: PaperSize, tips: number): WorksheetOrder {
  return { sheet: "worksheet", language, paper, units, tips, model_version: program };
}
