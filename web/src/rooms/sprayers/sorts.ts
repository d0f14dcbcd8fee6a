import type { SprayerKind } from "@/core/operations.gen";
import type { Option } from "@/parts/fields";
import type { Words } from "@/words/words";

const sorts: SprayerKind[] = ["boom", "boomless", "backpack", "handgun", "band"];

export const sortOptions = (words: Words["sprayers"]): Array<Option<SprayerKind>> =>
  sorts.map((value) => ({ value, label: words.sorts[value], hint: words.sortHints[value] }));

/** One person with a wand or a gun: nothing is driven, catches are of the whole spray. */
export const isByHand = (sort: SprayerKind | undefined): boolean => sort === "backpack" || sort === "handgun";
