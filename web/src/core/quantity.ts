// Amounts as the core gives them, and how they are written on a screen.
import type { Quantity } from "./operations.gen";

export interface Measured {
  value: number;
  unit: string;
  low?: number;
  high?: number;
}

/** An amount of an answer; undefined when the answer has none there. */
export function measured(quantity: Quantity | undefined): Measured | undefined {
  return typeof quantity === "object" ? quantity : undefined;
}

/**
 * A number as the project writes numbers: four significant digits, never dropping one before the
 * point, no trailing zeros (core/quantity/print.hpp has the same rule for paper and command line).
 */
export function showNumber(number: number, significant = 4): string {
  if (!Number.isFinite(number)) return "";
  if (number === 0) return "0";
  const digitsBefore = Math.max(1, Math.floor(Math.log10(Math.abs(number))) + 1);
  const decimals = Math.max(0, significant - (Math.abs(number) >= 1 ? digitsBefore : leadingPlace(number)));
  return roundHalfAway(number, decimals);
}

// 0.0456 has its first digit in place 2: four significant digits then need five decimals.
function leadingPlace(number: number): number {
  return Math.floor(Math.log10(Math.abs(number))) + 1;
}

// Rounds the decimal digits of the shortest text, half away from zero: 12.345 becomes 12.35.
function roundHalfAway(number: number, decimals: number): string {
  const sign = number < 0 ? "-" : "";
  const plain = plainDigits(Math.abs(number));
  const [whole = "0", fraction = ""] = plain.split(".");
  const kept = BigInt(whole + fraction.slice(0, decimals).padEnd(decimals, "0"));
  const up = (fraction[decimals] ?? "0") >= "5";
  const digits = String(up ? kept + 1n : kept).padStart(decimals + 1, "0");
  if (decimals === 0) return sign + digits;
  const rounded = `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`.replace(/\.?0+$/, "");
  return rounded === "0" ? "0" : sign + rounded;
}

// The shortest digits that give the number back, without an exponent.
function plainDigits(number: number): string {
  const text = String(number);
  const [digits = "0", exponentText] = text.split("e");
  if (exponentText === undefined) return text;
  const exponent = Number(exponentText);
  const [whole = "0", fraction = ""] = digits.split(".");
  if (exponent >= 0) return whole + fraction.padEnd(exponent, "0");
  return `0.${"0".repeat(-exponent - 1)}${whole}${fraction}`;
}

const tidyUnits: Record<string, string> = { ft2: "ft²", m2: "m²", in2: "in²", degC: "°C", degF: "°F" };

/** A unit as people write it. */
export function showUnit(unit: string): string {
  return tidyUnits[unit] ?? unit;
}

/** "12.99 gal/ac". */
export function show(quantity: Quantity | undefined): string {
  if (quantity === undefined) return "";
  if (typeof quantity === "string") return quantity;
  return `${showNumber(quantity.value)} ${showUnit(quantity.unit)}`;
}
