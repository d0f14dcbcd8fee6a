import { describe, expect, it } from "vitest";
import type { Bodies, Kind, Thing } from "@/notebook/things";
import { jobPacket, recordPacket, type Shelf } from "./order";

const thing = <K extends Kind>(id: string, fields: Bodies[K], more: Partial<Thing<K>> = {}): Thing<K> => ({ id, fields, changed: "", created: "", author: "", ...more });
const shelf = (things: { [K in Kind]?: Array<Thing<K>> }): Shelf => ({ things: <K extends Kind>(kind: K) => (things[kind] ?? []) as Array<Thing<K>> });

const spot = { name: "Draw", operation: "spot", request: { products: [] }, answer: {}, model: "" } as unknown as NonNullable<Bodies["job"]["plan"]>;
const check = { name: "r", operation: "record-check", request: { authorities: ["Texas"], date: "2031-05-14", as_of: "2031-05-14", end_time: "" }, answer: {}, model: "" } as unknown as NonNullable<Bodies["record"]["check"]>;
const record = thing<"record">("r", { name: "Heron Flat", job: "j", values: { area_treated: "7.4 ac", wind_speed: "" }, check }, { amendments: [{ at: "", author: "", body: { date: "", reason: "", values: { area_treated: "7.1 ac" } } }] });

describe("the order of a packet", () => {
  it("prints a record as it now stands, without what is blank", () => {
    const packet = recordPacket(shelf({ record: [record] }), "r");
    expect(packet?.record_values).toEqual({ area_treated: "7.1 ac" });
    expect(packet?.parts.map(({ file, operation }) => [file, operation])).toEqual([["01-record-check.json", "record-check"]]);
    expect(JSON.parse(packet?.parts[0]?.request ?? "")).toEqual({ authorities: ["Texas"], date: "2031-05-14", as_of: "2031-05-14", fields: ["area_treated"] });
  });
  it("leaves out answers that have no sheet, and still has the cover", () => {
    const job = thing<"job">("j", { name: "Draw", work: "spot", state: "planned", plan: spot });
    expect(jobPacket(shelf({ job: [job] }), "j")).toMatchObject({ job: { name: "Draw" }, parts: [], record_values: {} });
  });
  it("is none for what is not in the notebook", () => expect(jobPacket(shelf({}), "j")).toBeUndefined());
});
