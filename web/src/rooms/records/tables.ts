// What a record can hold and whose rules there are, as data/rules says it: the same tables that the core
// judges by. Here they give labels and choices; the judgement is the core's.
import authorityRows from "../../../../data/rules/authorities.tsv?raw";
import fieldRows from "../../../../data/rules/fields.tsv?raw";
import { settings } from "@/app/settings";

function rowsOf(text: string): Array<Record<string, string>> {
  const [head = "", ...lines] = text.trimEnd().split("\n");
  const names = head.split("\t");
  return lines.map((line) => {
    const cells = line.split("\t");
    return Object.fromEntries(names.map((name, index) => [name, cells[index] ?? ""]));
  });
}

export interface Authority {
  key: string;
  citation: string;
  validFrom: string;
  validUntil: string;
}

const authorities: Authority[] = rowsOf(authorityRows).map((row) => ({
  key: row["key"] ?? "",
  citation: row["citation"] ?? "",
  validFrom: row["valid_from"] ?? "",
  validUntil: row["valid_until"] ?? "",
}));

/** The authorities whose rules were in force on a day; on an unknown day, those that never ended. */
export function authoritiesOn(date: string | undefined): Authority[] {
  return authorities.filter(({ validFrom, validUntil }) => {
    if (!date) return validUntil === "";
    return (validFrom === "" || validFrom <= date) && (validUntil === "" || date < validUntil);
  });
}

const groupOf = {
  who: ["customer_name", "customer_address", "landowner", "operators", "certified_applicator", "training_proof", "company"],
  where: ["location_text", "site_or_crop", "area_treated", "area_gross", "area_excluded", "spot_flag", "location_geometry", "position_uncertainty_m", "plss_or_fieldno", "site_id_operator_id", "map_attachment"],
  what: ["product_name", "epa_reg_no", "active_ingredients", "formulation", "rup_flag", "rate_product", "concentration", "total_product", "total_mix", "carrier_volume", "loads", "adjuvants", "mixing_site", "supplier_lot", "signal_word_ppe", "target_species", "pretreat_cover"],
  when: ["date", "time_start", "time_end", "rei_end"],
  weather: ["wind_speed", "wind_dir", "air_temp", "rel_humidity", "sky_inversion", "weather_method"],
  how: ["method", "equipment_id", "nozzle_pressure", "calibration_ref", "label_compliance", "esa_bulletin"],
} as const;

export type Group = keyof typeof groupOf | "after";
export const groups: Group[] = ["when", "who", "where", "what", "how", "weather", "after"];

export type Box = "words" | "long" | "date" | "time" | "yes_no";

export interface Field {
  key: string;
  label: string;
  labelSpanish: string;
  group: Group;
  box: Box;
}

const long = new Set(["loads", "adjuvants", "deviations", "label_compliance", "active_ingredients", "location_text", "signal_word_ppe", "leftover", "followup"]);

function boxOf(key: string, type: string): Box {
  if (type === "boolean") return "yes_no";
  if (key === "date" || key === "copies_given" || key === "retain_until") return "date";
  if (type === "time") return "time";
  return long.has(key) ? "long" : "words";
}

function groupFor(key: string): Group {
  const found = (Object.keys(groupOf) as Array<keyof typeof groupOf>).find((group) => (groupOf[group] as readonly string[]).includes(key));
  return found ?? "after";
}

function placeInGroup(key: string): number {
  const group = groupFor(key);
  return group === "after" ? 0 : (groupOf[group] as readonly string[]).indexOf(key);
}

/** Every field, in the order a person fills them in. */
export const fields: Field[] = rowsOf(fieldRows)
  .map((row) => {
    const key = row["key"] ?? "";
    return { key, label: row["label_en"] ?? key, labelSpanish: row["label_es"] ?? key, group: groupFor(key), box: boxOf(key, row["type"] ?? "") };
  })
  .sort((a, b) => groups.indexOf(a.group) - groups.indexOf(b.group) || placeInGroup(a.key) - placeInGroup(b.key));

const byKey = new Map(fields.map((field) => [field.key, field]));

export const fieldOf = (key: string): Field | undefined => byKey.get(key);

/** The label of a field in the language of the person; a field of a later version shows its key. */
export function labelOf(key: string): string {
  const field = byKey.get(key);
  if (field === undefined) return key.replaceAll("_", " ");
  return settings.now().language === "es" ? field.labelSpanish : field.label;
}
