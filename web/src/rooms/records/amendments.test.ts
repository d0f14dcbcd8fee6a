import { describe, expect, it } from "vitest";
import { amendmentsOf, valuesNow } from "./amendments";
import { entered, type RecordThing } from "./standing";

const amendment = (at: string, values: Record<string, string>) => ({ at, author: "Ada Quill", body: { date: at.slice(0, 10), reason: "read the wrong mark", values } });
const record = (amendments: RecordThing["amendments"]): RecordThing => ({
  id: "1",
  changed: "2031-05-14T18:00:00Z",
  created: "2031-05-14T18:00:00Z",
  author: "Ada Quill",
  closed: { at: "2031-05-14T18:00:00Z", by: "Ada Quill" },
  fields: { name: "Heron Flat", values: { area_treated: "7.4 ac", wind_speed: "5 mph" } },
  amendments,
});

describe("corrections of a closed record", () => {
  it("leave what was closed and stand beside it, each after the one before", () => {
    const twice = record([amendment("2031-05-15T08:00:00Z", { area_treated: "7.1 ac" }), amendment("2031-05-16T08:00:00Z", { area_treated: "7.2 ac" })]);
    expect(amendmentsOf(twice).map(({ changes }) => changes.map(({ before, after }) => [before, after]))).toEqual([[["7.4 ac", "7.1 ac"]], [["7.1 ac", "7.2 ac"]]]);
    expect(valuesNow(twice)["area_treated"]).toBe("7.2 ac");
    expect(twice.fields.values?.["area_treated"]).toBe("7.4 ac");
  });
  it("can say that a value is not known after all", () => {
    const emptied = record([amendment("2031-05-15T08:00:00Z", { wind_speed: "" })]);
    expect(entered(valuesNow(emptied))).toEqual(["area_treated"]);
  });
  it("takes no value from a body that has none", () => {
    const strange = record([{ at: "2031-05-15T08:00:00Z", author: "B", body: { date: "2031-05-15", reason: "note only", values: 3 } }]);
    expect(valuesNow(strange)).toEqual({ area_treated: "7.4 ac", wind_speed: "5 mph" });
  });
});
