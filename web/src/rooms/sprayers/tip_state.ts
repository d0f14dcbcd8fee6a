// The verdict of a tip check in a few words.
import type { TipCheckAnswer } from "@/core/operations.gen";
import { count, wordsNow } from "@/words/words";

export interface TipState {
  text: string;
  good: boolean;
}

export function tipState(answer: Partial<TipCheckAnswer> | undefined): TipState {
  const { sprayers } = wordsNow();
  if (answer?.tips === undefined) return { text: sprayers.tipsNever, good: false };
  if (answer.replace_all === true) return { text: sprayers.tipsAll, good: false };
  const out = answer.tips.filter(({ verdict }) => verdict !== "ok" && verdict !== "at_limit").length;
  if (out > 0) return { text: count(out, sprayers.tipsOut), good: false };
  const atLimit = answer.tips.filter(({ verdict }) => verdict === "at_limit").length;
  return atLimit > 0 ? { text: count(atLimit, sprayers.tipsAtLimit), good: false } : { text: sprayers.tipsGood, good: true };
}
