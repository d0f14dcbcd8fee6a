// The core writes plain letters; people read signs, on screen as on paper (reports/packet/common.cpp has the
// same list): "+-5 %" is "±5 %", "3 x 4" is "3 × 4".
const better: Array<[plain: string, good: string]> = [
  ["+-", "±"],
  [" x ", " × "],
  [" * ", " × "],
  ["degF", "°F"],
  ["degC", "°C"],
  [" ft2", " ft²"],
  [" m2", " m²"],
  [" in2", " in²"],
];

export function typeset(text: string): string {
  return better.reduce((before, [plain, good]) => before.replaceAll(plain, good), text);
}
