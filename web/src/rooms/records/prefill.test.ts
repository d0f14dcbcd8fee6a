import { describe, expect, it } from "vitest";
import type { Bodies, Kind, Thing } from "@/notebook/things";
import { prefill, type Book } from "./prefill";

const thing = <K extends Kind>(id: string, fields: Bodies[K]): Thing<K> => ({ id, fields, changed: "", created: "", author: "" });
const book = (shelf: { [K in Kind]?: Array<Thing<K>> }): Book => ({ things: <K extends Kind>(kind: K) => (shelf[kind] ?? []) as Array<Thing<K>> });
const job = (fields: Partial<Bodies["job"]>) => thing<"job">("j", { name: "Heron Flat", work: "broadcast", state: "done", ...fields });

describe("a record from a job", () => {
  it("enters nothing that the notebook does not know", () => {
    const { values, from } = prefill(book({ job: [job({})] }), "j");
    expect(values).toEqual({ method: "Broadcast" });
    expect(Object.keys(from)).toEqual(["method"]);
    expect(prefill(book({}), "j")).toEqual({ values: {}, from: {} });
  });
  it("takes the day that was over the day that was planned, and says so", () => {
    const pass = thing<"pass">("p", { job: "j", begun_at: "2031-05-15T06:50:00-05:00", ended_at: "2031-05-15T11:20:00-05:00" });
    const later = thing<"pass">("q", { job: "j", begun_at: "2031-05-15T12:00:00-05:00", ended_at: "2031-05-15T12:30:00-05:00" });
    const other = thing<"pass">("r", { job: "other", begun_at: "2031-05-01T06:00:00-05:00" });
    const { values, from } = prefill(book({ job: [job({ planned_for: "2031-05-14" })], pass: [other, later, pass] }), "j");
    expect(values).toMatchObject({ date: "2031-05-15", time_start: "06:50", time_end: "12:30" });
    expect(from).toMatchObject({ date: "pass/p", time_end: "pass/q" });
    expect(prefill(book({ job: [job({ planned_for: "2031-05-14" })] }), "j").from["date"]).toBe("plan/j");
  });
  it("gives the address of the landowner to the customer only when they are one", () => {
    const owner = thing<"landowner">("o", { name: "Wren Oakhollow", address: "1 Tarn Hollow Road" });
    const stand = thing<"stand">("s", { name: "Heron Flat", how: "typed", landowner: "o" });
    const shelf = (customer: string) => book({ job: [job({ stand: "s", customer })], stand: [stand], landowner: [owner] });
    expect(prefill(shelf("Wren Oakhollow"), "j").values["customer_address"]).toBe("1 Tarn Hollow Road");
    expect(prefill(shelf("Somebody Else"), "j").values["customer_address"]).toBeUndefined();
  });
  it("names the one with a licence, and everybody who was there", () => {
    const people = [thing<"operator">("b", { name: "Bo Tansy" }), thing<"operator">("a", { name: "Ada Quill", licence: "SPEC-0042" })];
    const { values } = prefill(book({ job: [job({ operators: ["b", "a"] })], operator: people }), "j");
    expect(values).toMatchObject({ operators: "Bo Tansy; Ada Quill", certified_applicator: "Ada Quill, SPEC-0042" });
  });
});
