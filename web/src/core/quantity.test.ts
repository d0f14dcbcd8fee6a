import { describe, expect, it } from "vitest";
import { show, showNumber } from "./quantity";

// The rule is that of core/quantity/print.hpp; the figures in its comment and test are repeated here.
describe("showNumber", () => {
  it.each([
    [43560, "43560"],
    [12.9874, "12.99"],
    [0.1, "0.1"],
    [0, "0"],
    [2.675, "2.675"],
    [1.92400192, "1.924"],
    [0.0456789, "0.04568"],
    [0.00012345, "0.0001235"],
    [123456.5, "123457"],
    [9.9999, "10"],
    [0.99996, "1"],
    [-12.9874, "-12.99"],
    [1e21, "1000000000000000000000"],
    [1e-7, "0.0000001"],
  ])("writes %d as %s", (number, text) => expect(showNumber(number)).toBe(text));

  it("writes an amount with its unit", () => expect(show({ value: 4576, unit: "ft2" })).toBe("4576 ft²"));
});
