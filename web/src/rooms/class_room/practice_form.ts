// A practice sheet: the same number, topics, units and difficulty give the same problems anywhere.
import { ask, type Asked } from "@/core/core";
import type { PracticeDifficulty, PracticeTopic } from "@/core/operations.gen";
import { useForm, type Form } from "@/notebook/forms";

export const topics: PracticeTopic[] = ["course", "calibration", "refill", "crew", "loads", "percent_solution", "stems", "rinse", "substitute"];

export interface PracticeForm {
  seed: string;
  topics: PracticeTopic[];
  count: string;
  difficulty: PracticeDifficulty;
  mode: "learner" | "teacher";
  /** Answers by the number of the problem. */
  given: Record<string, string>;
  checked: boolean;
  /** Numbers of the problems whose key is open. */
  open: number[];
}

const first: PracticeForm = { seed: "1", topics: [], count: "8", difficulty: "plain", mode: "learner", given: {}, checked: false, open: [] };

export const usePractice = (): Form<PracticeForm> => useForm<PracticeForm>("practice", first);

/** A new number of four digits, to be said aloud. */
export const anySeed = (): string => String(1000 + ((crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 9000));

// What is no whole number goes to the core as text: it says what is wrong with it.
const whole = (text: string) => (/^\s*\d+\s*$/.test(text) ? Number(text) : (text.trim() as unknown as number));

export function askSheet({ seed, topics: chosen, count, difficulty, given, checked }: PracticeForm): Asked<"practice"> {
  const answers = Object.entries(given).filter(([number, text]) => text.trim() !== "" && Number(number) <= Number(count));
  return ask("practice", {
    seed: whole(seed),
    count: whole(count),
    difficulty,
    topics: topics.filter((topic) => chosen.includes(topic)),
    given_answers: checked ? answers.map(([number, text]) => ({ number: Number(number), text: text.trim() })) : [],
  }) as Asked<"practice">;
}
