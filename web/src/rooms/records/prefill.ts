// What the notebook already knows about a job, under the names the authorities' tables use. Each value
// says where it comes from; nothing is computed here, and what is not in the notebook stays not entered.
import { settings } from "@/app/settings";
import { ask } from "@/core/core";
import type { LabelRate, ProductAmount, Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import type { Bodies, Kind, Position, Thing } from "@/notebook/things";
import { showTime, wordsNow } from "@/words/words";
import type { Values } from "./standing";

export interface Prefilled {
  values: Values;
  /** Where each value is from: "job/ID", "reading/ID"; "plan/ID" for what was planned and may have gone otherwise. */
  from: Values;
}

/** The parts of the notebook a record is made from. */
export interface Book {
  things<K extends Kind>(kind: K): Array<Thing<K>>;
}

class Sheet {
  readonly values: Values = {};
  readonly from: Values = {};

  put(key: string, value: string | undefined, from: string): void {
    if (value === undefined || value.trim() === "") return;
    this.values[key] = value.trim();
    this.from[key] = from;
  }
}

const joined = (texts: Array<string | undefined>, between = "; "): string => texts.filter((text) => text !== undefined && text !== "").join(between);

export const amountText = (amount: Quantity | LabelRate | undefined): string => {
  if (amount === undefined) return "";
  if (typeof amount === "string") return amount;
  const basis = "basis" in amount ? amount.basis : undefined;
  return joined([show(amount), basis], " ");
};

const productAmount = (amount: ProductAmount | undefined) => amountText(amount?.volume ?? amount?.mass ?? amount?.acid ?? amount?.ingredient);

export function prefill(book: Book, jobId: string): Prefilled {
  const sheet = new Sheet();
  const job = book.things("job").find(({ id }) => id === jobId);
  if (job === undefined) return { values: {}, from: {} };
  fromJob(sheet, job);
  fromStand(sheet, book, job);
  fromPeople(sheet, book, job);
  fromProducts(sheet, book, job);
  fromSprayer(sheet, book, job);
  fromDay(sheet, book, job);
  fromReadings(sheet, book, job);
  fromAttachments(sheet, book, job);
  return { values: sheet.values, from: sheet.from };
}

type Job = Thing<"job">;
const named = <K extends Kind>(book: Book, kind: K, id: string | undefined) => (id === undefined ? undefined : book.things(kind).find((found) => found.id === id));

function fromJob(sheet: Sheet, { id, fields }: Job): void {
  const { records } = wordsNow();
  const from = `job/${id}`;
  sheet.put("customer_name", fields.customer, from);
  sheet.put("target_species", fields.target, from);
  sheet.put("site_or_crop", fields.site, from);
  sheet.put("method", records.work[fields.work], from);
  sheet.put("date", fields.planned_for, `plan/${id}`);
  const request = (fields.plan?.request ?? {}) as { net_area?: Quantity; treated_area?: Quantity };
  sheet.put("area_treated", fields.net_area ?? amountText(request.net_area ?? request.treated_area), `plan/${id}`);
  if (fields.work === "spot") sheet.put("spot_flag", wordsNow().common.yes, from);
}

function fromStand(sheet: Sheet, book: Book, { fields }: Job): void {
  const stand = named(book, "stand", fields.stand);
  if (stand === undefined) return;
  const { records } = wordsNow();
  const from = `stand/${stand.id}`;
  const { name, place, answer, typed_area, boundary, position_error, how } = stand.fields;
  sheet.put("location_text", joined([name, place], ", "), from);
  sheet.put("area_gross", amountText(ownUnits(answer as Areas | undefined)) || typed_area, from);
  const corner = boundary && firstCorner(boundary.coordinates);
  if (corner) sheet.put("location_geometry", records.boundaryFrom.replace("{0}", `${corner.lat}, ${corner.lon}`), from);
  sheet.put("position_uncertainty_m", position_error && joined([position_error, records.measured[how]], ", "), from);
  const owner = named(book, "landowner", stand.fields.landowner);
  if (owner === undefined) return;
  sheet.put("landowner", owner.fields.name, `landowner/${owner.id}`);
  if (owner.fields.name !== fields.customer) return;
  sheet.put("customer_address", joined([owner.fields.address, owner.fields.phone], ", "), `landowner/${owner.id}`);
}

type Areas = { area?: Quantity; area_in_other_units?: Quantity };

/** The area in the units of the person: a kept answer has it in both. */
function ownUnits(answer: Areas | undefined): Quantity | undefined {
  const wanted = settings.now().units === "metric" ? "ha" : "ac";
  const both = [answer?.area, answer?.area_in_other_units];
  return both.find((area) => typeof area === "object" && area.unit === wanted) ?? answer?.area;
}

function firstCorner(coordinates: unknown): Position | undefined {
  let inner = coordinates;
  while (Array.isArray(inner) && Array.isArray(inner[0])) inner = inner[0] as unknown;
  const [lon, lat] = Array.isArray(inner) ? (inner as unknown[]) : [];
  return typeof lon === "number" && typeof lat === "number" ? { lon, lat } : undefined;
}

function fromPeople(sheet: Sheet, book: Book, { id, fields }: Job): void {
  const passes = book.things("pass").filter(({ fields: pass }) => pass.job === id);
  const ids = [...new Set([...(fields.operators ?? []), ...passes.flatMap(({ fields: pass }) => pass.operator ?? [])])];
  const people = ids.flatMap((person) => named(book, "operator", person) ?? []);
  const first = people[0];
  if (first === undefined) return;
  sheet.put("operators", joined(people.map(({ fields: person }) => person.name)), `operator/${first.id}`);
  const licensed = people.find(({ fields: person }) => person.licence !== undefined && person.licence !== "");
  if (licensed) sheet.put("certified_applicator", joined([licensed.fields.name, licensed.fields.licence], ", "), `operator/${licensed.id}`);
}

function fromProducts(sheet: Sheet, book: Book, { id, fields }: Job): void {
  const { records } = wordsNow();
  const products = (fields.products ?? []).flatMap((product) => {
    const card = named(book, "product_card", product.card_id);
    return card === undefined ? [] : [{ product, id: card.id, card: card.fields.card }];
  });
  const first = products[0];
  if (first === undefined) return;
  const isHelper = ({ card }: (typeof products)[number]) => ["water_conditioner", "surfactant", "oil", "drift_agent", "dye", "defoamer"].includes(card.formulation ?? "");
  const main = products.filter((product) => !isHelper(product));
  const label = `product_card/${(main[0] ?? first).id}`;
  sheet.put("product_name", joined(main.map(({ card }) => card.name)), label);
  sheet.put("epa_reg_no", joined(main.map(({ card }) => card.registration)), label);
  sheet.put("active_ingredients", joined(main.flatMap(({ card }) => (card.ingredients ?? []).map((each) => joined([each.name, amountText(each.acid_strength ?? each.strength ?? each.acid_part ?? each.part)], " ")))), label);
  sheet.put("formulation", joined(main.map(({ card }) => card.formulation && records.formulations[card.formulation])), label);
  const rates = main.map(({ card, product }) => joined([card.name, amountText(product.rate)], " "));
  sheet.put("rate_product", main.length === 1 && main[0] ? amountText(main[0].product.rate) : joined(rates), `plan/${id}`);
  const shares = main.filter(({ product }) => /%|\/100/.test(amountText(product.rate)));
  sheet.put("concentration", joined(shares.map(({ product }) => amountText(product.rate))), `plan/${id}`);
  sheet.put("adjuvants", joined(products.filter(isHelper).map(({ card, product }) => joined([card.name, amountText(product.rate)], " "))), `plan/${id}`);
}

/** What was mixed and when it was sprayed; the plan where no load was written down. */
function fromDay(sheet: Sheet, book: Book, { id, fields }: Job): void {
  const { records } = wordsNow();
  const loads = book.things("load").filter(({ fields: load }) => load.job === id).sort((a, b) => a.fields.number - b.fields.number);
  const passes = book.things("pass").filter(({ fields: pass }) => pass.job === id);
  const plan = fields.plan?.operation === "loads" ? fields.plan.answer : undefined;
  const totals = (plan?.products ?? []).map((product) => joined([product.name, productAmount(product.total)], " "));
  sheet.put("total_product", joined(totals), `plan/${id}`);
  sheet.put("total_mix", amountText(plan?.total_mix), `plan/${id}`);
  sheet.put("carrier_volume", fields.mix_per_area, `plan/${id}`);
  const lines = loads.map(({ fields: load }) =>
    joined([`${records.load} ${load.number}`, load.mixed_at && showTime(load.mixed_at), load.mix ?? load.carrier, ...(load.amounts ?? []).map(({ product, amount }) => `${productName(book, product)} ${amount}`)], ", "),
  );
  const lastLoad = loads.at(-1);
  if (lastLoad) {
    fromLoads(sheet, loads, fields);
    sheet.put("loads", lines.join("\n"), `load/${lastLoad.id}`);
    sheet.put("leftover", lastLoad.fields.left_over, `load/${lastLoad.id}`);
  }
  const begun = earliest([...passes, ...loads].flatMap(({ fields: each, id: at }) => (each.begun_at ? [{ at, time: each.begun_at }] : [])));
  const ended = earliest([...passes, ...loads].flatMap(({ fields: each, id: at }) => (each.ended_at ? [{ at, time: each.ended_at }] : [])), true);
  const kindOf = (at: string) => (passes.some((pass) => pass.id === at) ? "pass" : "load");
  if (begun) {
    sheet.put("date", begun.time.slice(0, 10), `${kindOf(begun.at)}/${begun.at}`);
    sheet.put("time_start", clockOf(begun.time), `${kindOf(begun.at)}/${begun.at}`);
  }
  if (ended) sheet.put("time_end", clockOf(ended.time), `${kindOf(ended.at)}/${ended.at}`);
}

const isWeight = (amount: string) => /(\blb|\bg|\bkg|oz wt|\bt)\s*$/.test(amount);

/** What the loads put on the ground, less what was left: the core adds it up. */
function fromLoads(sheet: Sheet, loads: Array<Thing<"load">>, job: Bodies["job"]): void {
  const lastLoad = loads.at(-1);
  if (lastLoad === undefined || loads.some(({ fields }) => !fields.mix)) return;
  const { answer } = ask("balance", {
    planned_area: job.net_area,
    mix_per_area: job.mix_per_area,
    leftover: lastLoad.fields.left_over,
    products: [...new Set(loads.flatMap(({ fields }) => (fields.amounts ?? []).map(({ product }) => product)))].map((name) => ({ name })),
    loads: loads.map(({ fields: { mix, amounts } }) => ({ mix, products: (amounts ?? []).map(({ product, amount }) => (isWeight(amount) ? { name: product, weight: amount } : { name: product, amount })) })),
  });
  const from = `load/${lastLoad.id}`;
  const totals = (answer?.products ?? []).map(({ name, used, used_weight }) => joined([name, amountText(used ?? used_weight)], " "));
  sheet.put("total_product", joined(totals), from);
  sheet.put("total_mix", amountText(answer?.mix?.by_loads), from);
}

// The clock of the place where it was written, as the instant carries it.
const clockOf = (instant: string) => /T(\d\d:\d\d)/.exec(instant)?.[1];

const productName = (book: Book, id: string) => named(book, "product_card", id)?.fields.card.name ?? id;

function earliest(times: Array<{ at: string; time: string }>, last = false): { at: string; time: string } | undefined {
  const sorted = [...times].sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
  return last ? sorted.at(-1) : sorted[0];
}

function fromSprayer(sheet: Sheet, book: Book, { fields }: Job): void {
  const sprayer = named(book, "sprayer", fields.sprayer);
  if (sprayer) {
    const from = `sprayer/${sprayer.id}`;
    sheet.put("equipment_id", sprayer.fields.name, from);
    sheet.put("nozzle_pressure", joined([sprayer.fields.tip_words, sprayer.fields.pressure], ", "), from);
  }
  const calibration = named(book, "calibration", fields.calibration) ?? book.things("calibration").find(({ fields: each }) => each.sprayer === fields.sprayer && fields.sprayer !== undefined);
  if (calibration === undefined) return;
  const { name, on, answer } = calibration.fields;
  const from = `calibration/${calibration.id}`;
  const output = amountText((answer as Bodies["calibration"]["answer"] | undefined)?.output);
  sheet.put("calibration_ref", joined([name, on, output], ", "), from);
  if (output !== "") sheet.put("carrier_volume", output, from);
}

function fromReadings(sheet: Sheet, book: Book, { id }: Job): void {
  const newest = book.things("reading").filter(({ fields: reading }) => reading.job === id).sort((a, b) => Date.parse(b.fields.taken) - Date.parse(a.fields.taken))[0];
  if (newest === undefined) return;
  const { records } = wordsNow();
  const from = `reading/${newest.id}`;
  const readings = newest.fields.request.readings ?? [];
  const timed = (text: (reading: (typeof readings)[number]) => string) =>
    joined(readings.map((reading) => (text(reading) === "" ? "" : joined([text(reading), /T(\d\d:\d\d)/.exec(reading.taken)?.[1]], " "))));
  sheet.put("wind_speed", timed(({ wind, gust }) => joined([amountText(wind), gust === undefined ? "" : `${records.gust} ${amountText(gust)}`], ", ")), from);
  sheet.put("wind_dir", timed(({ wind_from }) => wind_from ?? ""), from);
  sheet.put("air_temp", timed(({ temperature }) => amountText(temperature)), from);
  sheet.put("rel_humidity", timed(({ humidity }) => amountText(humidity)), from);
  const signs = readings.flatMap(({ cues }) => cues ?? []).map((cue) => records.cues[cue]);
  sheet.put("sky_inversion", joined([...new Set(signs)]), from);
  sheet.put("weather_method", timed(({ at_height }) => (at_height === undefined ? "" : `${records.atHeight} ${amountText(at_height)}`)), from);
  sheet.put("label_compliance", newest.fields.answer.text, from);
}

function fromAttachments(sheet: Sheet, book: Book, { id }: Job): void {
  const photos = book.things("attachment").filter(({ fields: { of, type } }) => of === id && type.startsWith("image/"));
  const first = photos[0];
  if (first) sheet.put("photos", joined(photos.map(({ fields: { name } }) => name)), `attachment/${first.id}`);
}
