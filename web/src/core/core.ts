// The one door to the C++ core. It runs in the page itself: an answer takes microseconds, so it is on
// the screen in the frame of the keystroke that asked for it.
import { open } from "@wasm/swathbook.mjs";
import address from "@wasm/swathbook.wasm?url";
import type { Finding, Operations, Step } from "./operations.gen";
import { settings } from "@/app/settings";
import { typeset } from "./typeset";

export type OperationName = keyof Operations;
type Options = "units" | "working" | "language";
/** What a form may hold of a request: units, working and language are the app's own. */
export type RequestOf<K extends OperationName> = Omit<Operations[K]["request"], Options>;
export type AnswerOf<K extends OperationName> = Operations[K]["answer"];

/** What was wrong: the same code, field and sentence on every face. */
export interface Refusal {
  code: string;
  field?: string;
  detail: string;
}

/** One question and what came of it: an answer with its remarks, or a refusal. */
export interface Asked<K extends OperationName = OperationName> {
  operation: K;
  request: RequestOf<K>;
  answer?: AnswerOf<K>;
  findings: Finding[];
  working: Step[];
  refusal?: Refusal;
}

type Module = Awaited<ReturnType<typeof open>>;
let core: Module | undefined;

/** Loads the core. Everything else in this file needs it to be done. */
export async function loadCore(): Promise<void> {
  core = await open(new URL(address, location.href));
}

/** The running module, for the notebook and the tests. */
export function module(): Module {
  if (core === undefined) throw new Error("the core is not loaded yet");
  return core;
}

function readRefusal(json: string): Refusal {
  const { error } = JSON.parse(json) as { error: Refusal };
  return { ...error, detail: typeset(error.detail) };
}

const typesetFinding = (finding: Finding): Finding => ({ ...finding, text: typeset(finding.text) });
const typesetStep = (step: Step): Step => ({ ...step, text: typeset(step.text), expression: typeset(step.expression), result: typeset(step.result) });

/** Asks an operation in the units and the language of the app, with its working; or in a language given. */
export function ask<K extends OperationName>(operation: K, request: RequestOf<K>, language = settings.now().language): Asked<K> {
  const { units } = settings.now();
  const asked: Asked<K> = { operation, request, findings: [], working: [] };
  const options = language === "en" ? { units, working: true } : { units, working: true, language };
  const { ok, json } = module().callText(operation, JSON.stringify({ ...withoutBlanks(request), ...options }));
  if (!ok) return { ...asked, refusal: readRefusal(json) };
  const answer = JSON.parse(json.replaceAll("+-", "±")) as AnswerOf<K>; // in the answer's own sentences too
  return { ...asked, answer, findings: (answer.findings ?? []).map(typesetFinding), working: (answer.working ?? []).map(typesetStep) };
}

/** The request without what was left blank, so that "not entered" never reaches the core as a text. */
export function withoutBlanks<T>(value: T): T {
  if (Array.isArray(value)) {
    return value.map((item: unknown) => withoutBlanks(item)).filter((item) => !isBlank(item)) as T;
  }
  if (value !== null && typeof value === "object") {
    const kept = Object.entries(value)
      .map(([name, item]) => [name, withoutBlanks(item as unknown)] as const)
      .filter(([, item]) => !isBlank(item));
    return Object.fromEntries(kept) as T;
  }
  return value;
}

function isBlank(value: unknown): boolean {
  if (value === undefined || value === null || value === "") return true;
  if (typeof value === "object" && !Array.isArray(value)) return Object.keys(value).length === 0;
  return false;
}
