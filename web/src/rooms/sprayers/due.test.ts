import { describe, expect, it } from "vitest";
import { dueOf } from "./due";

describe("when a calibration is due", () => {
  it("is not asked for before there was one", () => expect(dueOf({}, undefined, "2031-05-14")).toBeUndefined());
  it("is each season where nothing was set", () => {
    expect(dueOf({}, "2031-05-14", "2032-05-13")).toBeUndefined();
    expect(dueOf({}, "2031-05-14", "2032-05-14")).toBe("age");
  });
  it("is after the days that were set", () => {
    expect(dueOf({ calibrate_after_days: 30 }, "2031-05-14", "2031-06-13")).toBeUndefined();
    expect(dueOf({ calibrate_after_days: 30 }, "2031-05-14", "2031-06-14")).toBe("age");
  });
  it("never is where nobody wants to be asked", () => expect(dueOf({ calibrate_after_days: 0 }, "2021-05-14", "2031-05-14")).toBeUndefined());
  it("is after new tips, whatever the age", () => {
    expect(dueOf({ tips_since: "2031-05-15", calibrate_after_days: 0 }, "2031-05-14", "2031-05-16")).toBe("tips");
    expect(dueOf({ tips_since: "2031-05-14" }, "2031-05-14", "2031-05-16")).toBeUndefined();
  });
});
