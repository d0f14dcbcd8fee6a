import { describe, expect, it } from "vitest";
import { daysBetween } from "./days";

describe("days between civil dates", () => {
  it("counts over the end of a month and a leap day", () => {
    expect(daysBetween("2032-02-28", "2032-03-01")).toBe(2);
    expect(daysBetween("2031-02-28", "2031-03-01")).toBe(1);
  });
  it("is not moved by summer time", () => expect(daysBetween("2031-03-08", "2031-03-10")).toBe(2));
  it("takes an instant for its day", () => expect(daysBetween("2031-05-14T23:59:00Z", "2031-05-15")).toBe(1));
  it("does not guess at what is no date", () => expect(daysBetween("spring", "2031-05-15")).toBeUndefined());
});
