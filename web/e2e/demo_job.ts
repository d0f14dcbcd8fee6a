// The demo scenario (data/demo) as things of a notebook: everything and everybody in it is invented.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Bodies } from "../src/notebook/things";
import { answerOf, given, idOf, type Given } from "./notebook_of";

const read = (name: string) => JSON.parse(readFileSync(fileURLToPath(new URL(`../../data/demo/${name}.json`, import.meta.url)), "utf8")) as Record<string, unknown>;

const numbers = { trust: 1, ada: 2, bo: 3, heron: 4, rig: 5, calibration: 6, tips: 7, herb: 8, ams: 9, stick: 10, job: 11, load: 12, pass: 13, reading: 14 };
export const demo = Object.fromEntries(Object.entries(numbers).map(([name, number]) => [name, idOf(number)])) as Record<keyof typeof numbers, string>;
export const demoDay = "2031-05-14";

async function kept(operation: string, file: string) {
  const request = read(file);
  return { operation, request, answer: await answerOf(operation, request), model: "swathbook 0.1.0", on: demoDay };
}

/** Heron Flat on 14 May 2031: planned, calibrated, mixed, sprayed, read; not yet on record. */
export async function demoNotebook(): Promise<Given[]> {
  const loads = await kept("loads", "08-loads-heron-flat");
  const products = (loads.request["products"] ?? []) as Array<{ card: Bodies["product_card"]["card"]; rate: string }>;
  const [herb, ams, stick] = products;
  if (!herb || !ams || !stick) throw new Error("the demo has three products");
  const reading = {
    readings: [
      { taken: `${demoDay}T06:40:00-05:00`, wind: "5 mph", gust: "8 mph", wind_from: "SW", temperature: "61 °F", humidity: "64 %", at_height: "5 ft" },
      { taken: `${demoDay}T10:55:00-05:00`, wind: "7 mph", gust: "9 mph", wind_from: "SW", temperature: "68 °F", humidity: "55 %", at_height: "5 ft" },
    ],
    limits: [],
    now: `${demoDay}T10:56:00-05:00`,
  };
  const cast = (body: object) => body as never;
  return [
    given("landowner", numbers.trust, { name: "Wren Oakhollow, Specimen Habitat Trust", address: "1 Tarn Hollow Road, Isle of Specimen" }),
    given("operator", numbers.ada, { name: "Ada Quill", licence: "SPEC-0042" }),
    given("operator", numbers.bo, { name: "Bo Tansy", supervised_by: "Ada Quill" }),
    given("stand", numbers.heron, cast({ name: "Heron Flat", place: "Tarn Hollow, Isle of Specimen", landowner: demo.trust, how: "file", boundary: (read("05-area-heron-flat")["geometry"] as { geometry: unknown }).geometry, position_error: "1 m", ...(await kept("area", "05-area-heron-flat")) })),
    given("sprayer", numbers.rig, { name: "Boom rig", sort: "boom", tips: 9, tip_words: "04 flat fan, nine", pressure: "40 psi" }),
    given("calibration", numbers.calibration, cast({ name: "Boom rig, nine tips", sprayer: demo.rig, ...(await kept("calibrate", "01-calibrate-boom-rig")) })),
    given("tip_set", numbers.tips, cast({ name: "Boom rig, nine tips", sprayer: demo.rig, ...(await kept("tip-check", "03-tip-check-boom-rig")) })),
    given("product_card", numbers.herb, { name: "Demoherb 4 SL", card: herb.card }),
    given("product_card", numbers.ams, { name: "Sampletown AMS", card: ams.card }),
    given("product_card", numbers.stick, { name: "Mockstick 90", card: stick.card }),
    given("job", numbers.job, cast({
      name: "Heron Flat, spring brush control",
      work: "broadcast",
      state: "done",
      stand: demo.heron,
      sprayer: demo.rig,
      calibration: demo.calibration,
      operators: [demo.ada, demo.bo],
      customer: "Wren Oakhollow, Specimen Habitat Trust",
      target: "Sandbrier and tarnwillow",
      site: "Habitat, not a crop",
      planned_for: demoDay,
      net_area: "7.4 ac",
      mix_per_area: "18.6 gal/ac",
      products: [
        { card_id: demo.herb, rate: herb.rate },
        { card_id: demo.ams, rate: ams.rate },
        { card_id: demo.stick, rate: stick.rate },
      ],
      plan: { name: "Heron Flat with the boom rig", ...loads },
    })),
    ...[1, 2, 3].map((number) =>
      given("load", numbers.load + 10 * (number - 1), {
        job: demo.job,
        number,
        mix: "45.88 gal",
        amounts: [{ product: "Demoherb 4 SL", amount: "157.9 fl oz" }],
        mixed_at: `${demoDay}T0${6 + number}:30:00-05:00`,
        left_over: number === 3 ? "1.5 gal" : undefined,
      }),
    ),
    given("pass", numbers.pass, { job: demo.job, load: demo.load, operator: demo.ada, begun_at: `${demoDay}T06:50:00-05:00`, ended_at: `${demoDay}T11:20:00-05:00` }),
    given("reading", numbers.reading, cast({ name: "Heron Flat", operation: "spray-window", request: reading, answer: await answerOf("spray-window", reading), model: "swathbook 0.1.0", job: demo.job, taken: `${demoDay}T10:55:00-05:00` })),
  ];
}
