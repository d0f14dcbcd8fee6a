// What of the room is not drawing: cards to and from their form, plans of half-known jobs, steps of a key.
import { beforeAll, describe, expect, it, vi } from "vitest";
import type { ProductCard } from "@/core/operations.gen";
import type { Job, Thing } from "@/notebook/things";
import { allLimits, ingredientOf, ingredientText, limitsOf, limitText, type LimitName, type LimitText } from "./cards/card_data";

// The modules look at the browser when they are read.
vi.hoisted(() => {
  vi.stubGlobal("navigator", { language: "en-US" });
  vi.stubGlobal("location", { hash: "", href: "http://localhost/" });
  vi.stubGlobal("addEventListener", () => undefined);
  vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => undefined });
});
vi.mock("@wasm/swathbook.mjs", () => ({ open: () => undefined, SwathbookError: class extends Error {} }));
vi.mock("@wasm/swathbook.wasm?url", () => ({ default: "" }));

let data: typeof import("./job_data");
let stepper: typeof import("@/parts/stepper_field");
beforeAll(async () => {
  data = await import("./job_data");
  stepper = await import("@/parts/stepper_field");
});

const card: ProductCard = {
  name: "Demoherb 4 SL",
  limits: {
    max_single_rate: { value: "2.5 qt/ac", where: "page 4" },
    max_applications: { value: 2 },
    reentry: { after: "12 h", until_dry: true, where: "page 2" },
    finest_droplets: { value: "coarse" },
    protective_equipment: { text: "gloves", where: "page 1" },
  },
};

describe("a label card", () => {
  it("comes back from its form as it went in", () => {
    const typed = Object.fromEntries(allLimits.flatMap((field) => {
      const text = limitText(card.limits, field);
      return text === undefined ? [] : [[field.name, text]];
    })) as Partial<Record<LimitName, LimitText>>;
    expect(limitsOf(typed, [])).toEqual(card.limits);
  });

  it("leaves out what was left blank: not entered is not a limit of nothing", () => {
    expect(limitsOf({ max_single_rate: { value: "", where: "page 4" }, reentry: { value: "", until_dry: false } }, [{ value: " " }])).toEqual({});
  });

  it("leaves out a count that cannot be read", () => {
    expect(limitsOf({ max_applications: { value: "two" } }, [])).toEqual({});
  });

  it("keeps both strengths apart, by volume or by weight", () => {
    const both = { name: "fictionate acid", active: "5.4 lb a.i./gal", acid: "4 lb a.e./gal" };
    expect(ingredientOf("liquid", both)).toEqual({ name: "fictionate acid", strength: "5.4 lb a.i./gal", acid_strength: "4 lb a.e./gal" });
    expect(ingredientText(ingredientOf("liquid", both))).toEqual(both);
    expect(ingredientOf("dry", { name: "x", active: "41 % w/w", acid: "" })).toEqual({ name: "x", part: "41 % w/w" });
  });
});

describe("a job made on another phone", () => {
  it("may lack every field", () => {
    const plan = data.planOf({} as Job);
    expect(plan.products).toEqual([]);
    expect(data.workOf({} as Job)).toBe("broadcast");
    expect(data.loadsRequest({ ...plan, measures: [{} as never] }, []).tools).toEqual([]);
    expect(data.areaOfStand(undefined)).toBe("");
  });

  it("takes a card that is not here from the saved plan", () => {
    const job = { plan: { request: { products: [{ card, rate: "2 qt/ac" }] } } } as unknown as Job;
    const cardOf = data.cardsOf([], job);
    expect(cardOf({ card_id: "far", name: "Demoherb 4 SL", rate: "" })).toEqual(card);
    expect(cardOf({ card_id: "far", rate: "" })).toBeUndefined();
    expect(data.tankProducts([{ card_id: "far", name: "Demoherb 4 SL", rate: "2 qt/ac", jug: "2.5 gal" }], cardOf)).toEqual([{ card, rate: "2 qt/ac", jug: "2.5 gal" }]);
  });

  it("takes the newest calibration that has an answer", () => {
    const kept = (on: string, output?: string) => ({ id: on, created: on, fields: { sprayer: "s", on, answer: output === undefined ? undefined : { output } } }) as unknown as Thing<"calibration">;
    const list = data.calibrationsOf([kept("2031-05-01", "18 gal/ac"), kept("2031-05-09", "19 gal/ac"), kept("2031-06-01")], () => true);
    expect(list.map(({ id }) => id)).toEqual(["2031-05-09", "2031-05-01"]);
  });

  it("knows when its ground changed after the plan", () => {
    const plan = { operation: "loads", request: { net_area: "7.4 ac", mix_per_area: "18.6 gal/ac" } };
    expect(data.isOlderThanJob({ plan, net_area: "7.4 ac", mix_per_area: "18.6 gal/ac" } as unknown as Job)).toBe(false);
    expect(data.isOlderThanJob({ plan, net_area: "6.9 ac", mix_per_area: "18.6 gal/ac" } as unknown as Job)).toBe(true);
  });
});

describe("a key for more or less", () => {
  it("changes the digits and keeps the unit", () => {
    expect(stepper.stepped("18.6 gal/ac", 1)).toBe("19.6 gal/ac");
    expect(stepper.stepped("3,5 km/h", -0.5)).toBe("3 km/h");
    expect(stepper.stepped("0.1 mph", 0.2)).toBe("0.3 mph");
  });
  it("does nothing to what is not one number, and never reaches zero", () => {
    expect(stepper.stepped("5 ft 2 in", 1)).toBeUndefined();
    expect(stepper.stepped("", 1)).toBeUndefined();
    expect(stepper.stepped("0.5 mph", -0.5)).toBeUndefined();
  });
});

describe("counts as typed", () => {
  it("takes whole numbers only", () => {
    expect([" 3 ", "0", "2.5", "-1", "", "many"].map(data.whole)).toEqual([3, 0, undefined, undefined, undefined, undefined]);
  });
});
