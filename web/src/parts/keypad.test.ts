import { describe, expect, it } from "vitest";
import { pressed } from "./keypad";

const typed = (keys: string) => [...keys].reduce(pressed, "");

describe("the number keys", () => {
  it.each([
    ["12.5", "12.5"],
    ["1,75", "1,75"],
    [".4", "0.4"],
    ["1.2.3", "1.23"],
    ["007", "7"],
    ["12345678901", "123456789"],
  ])("%s gives %s", (keys, text) => expect(typed(keys)).toBe(text));
});
