// A class while it goes on: what all have in common, and what each learner measured. Kept as a form, so that a
// phone passed from hand to hand and a dead battery lose nothing.
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { SprayerKind } from "@/core/operations.gen";
import { useForm, type Form } from "@/notebook/forms";

export interface LearnerForm {
  name: string;
  width: string;
  course_length: string;
  times: string[];
  catches: string[];
  hand_answer: string;
}

export interface ClassForm {
  name: string;
  sprayer: SprayerKind;
  width: string;
  course_length: string;
  /** One catch holds the mix of one tip, or of all that serve the width. */
  catch_covers: "one_tip" | "all_tips";
  tips: string;
  learners: LearnerForm[];
}

export const emptyLearner: LearnerForm = { name: "", width: "", course_length: "", times: [""], catches: [""], hand_answer: "" };
const emptyClass: ClassForm = { name: "", sprayer: "backpack", width: "", course_length: "", catch_covers: "all_tips", tips: "", learners: [] };

export const classKey = (id: string) => `class/${id}`;

export const useClass = (id: string): Form<ClassForm> => useForm<ClassForm>(classKey(id), emptyClass);

/** The number a learner without a name goes by. */
export const nameOf = (learner: LearnerForm, index: number): string => learner.name.trim() || String(index + 1);

/** Something to compute with: a time and a catch. */
export const hasFigures = ({ times, catches }: LearnerForm): boolean => times.some((time) => time !== "") && catches.some((caught) => caught !== "");

export function learnersRequest({ sprayer, width, course_length, catch_covers, tips, learners }: ClassForm): RequestOf<"learners"> {
  const whole = /^\d+$/.test(tips.trim()) ? Number(tips) : undefined;
  const several = sprayer === "boom" || sprayer === "boomless" || sprayer === "band";
  return {
    sprayer,
    width,
    course_length,
    tips: several ? whole : undefined,
    catch_covers: several ? catch_covers : undefined,
    learners: learners.flatMap((learner, index) => (hasFigures(learner) ? [{ ...learner, name: nameOf(learner, index) }] : [])),
  };
}

/** The class side by side; undefined while nobody has measured. */
export function askClass(form: ClassForm): Asked<"learners"> | undefined {
  const request = learnersRequest(form);
  return request.learners.length === 0 ? undefined : (ask("learners", request) as Asked<"learners">);
}

/** One learner alone, so that a refusal stands where it belongs. */
export function askLearner(form: ClassForm, index: number): Asked<"learners"> | undefined {
  const learner = form.learners[index];
  if (learner === undefined || !hasFigures(learner)) return undefined;
  return ask("learners", learnersRequest({ ...form, learners: [{ ...learner, name: nameOf(learner, index) }] })) as Asked<"learners">;
}
