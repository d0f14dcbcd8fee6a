import { describe, expect, it } from "vitest";
import { checkRequest, entered, saysYes } from "./standing";
import { authoritiesOn, fields } from "./tables";

describe("what a record holds", () => {
  it("counts blank space as not entered", () => expect(entered({ date: "2031-05-14", wind_speed: "  ", wind_dir: "" })).toEqual(["date"]));
  it("reads yes and no in both languages and guesses at nothing else", () => {
    expect([saysYes("Yes"), saysYes("Sí"), saysYes("No"), saysYes(""), saysYes("perhaps"), saysYes(undefined)]).toEqual([true, true, false, undefined, undefined, undefined]);
  });
  it("asks with what is known only: no time that is none, no answer nobody gave", () => {
    const request = checkRequest({ authorities: ["Texas"], values: { date: "2031-05-14", time_end: "noon" } }, "2031-05-15");
    expect(request).toMatchObject({ date: "2031-05-14", as_of: "2031-05-15", end_time: undefined, restricted_use: undefined, worker_protection: undefined });
  });
  it("judges restricted use by the record's own field", () => {
    expect(checkRequest({ authorities: ["Texas"], values: { date: "2031-05-14", rup_flag: "No" }, worker_protection: "yes" })).toMatchObject({ restricted_use: false, worker_protection: true });
  });
});

describe("the rule tables", () => {
  it("do not offer a rule that had ended, and offer it for the days it was in force", () => {
    const keys = (day?: string) => authoritiesOn(day).map(({ key }) => key);
    expect(keys("2031-05-14")).not.toContain("7 CFR 110"); // removed on 11 July 2025: 90 FR, FR Doc 2025-08220
    expect(keys()).not.toContain("7 CFR 110");
    expect(keys("2025-07-11")).not.toContain("7 CFR 110");
    expect(keys("2025-07-10")).toContain("7 CFR 110");
    expect(keys("2025-12-31")).not.toContain("EU 2023/564");
  });
  it("have every field once, each with a label in both languages", () => {
    expect(fields.length).toBe(60);
    expect(new Set(fields.map(({ key }) => key)).size).toBe(60);
    for (const { label, labelSpanish } of fields) expect(label !== "" && labelSpanish !== "").toBe(true);
  });
});
