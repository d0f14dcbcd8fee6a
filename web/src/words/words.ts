// The words of the app in the language of the person. English is the shape; every other language has the
// same keys or the build fails (the type of its catalogue is that of the English one).
import { changing, useChanging } from "@/app/changing";
import { settings, type Language } from "@/app/settings";
import { module } from "@/core/core";
import { words as english } from "./en";

export type Words = typeof english;

const current = changing<Words>(english);

/** Fetches the catalogue of a language, and teaches the core its sentences: for a sheet in both languages. */
export async function catalogue(language: Language): Promise<Words> {
  if (language === "en") return english;
  const [{ words }] = await Promise.all([import("./es"), teachCore()]);
  return words;
}

/** Fetches the catalogue of a language and makes it the current one. */
export async function speak(language: Language): Promise<void> {
  current.set(await catalogue(language));
  document.documentElement.lang = language;
}

let sentences: Promise<string> | undefined;

/** The core's own sentences in Spanish. They weigh as much as a room; only those who read them fetch them. */
export function spanishOfCore(): Promise<string> {
  sentences ??= fetchSpanish().catch((error: unknown) => {
    sentences = undefined;
    throw error;
  });
  return sentences;
}

async function fetchSpanish(): Promise<string> {
  const { default: place } = await import("./core_spanish");
  const answer = await fetch(place);
  if (!answer.ok) throw new Error(`the Spanish sentences did not arrive (${answer.status})`);
  return answer.text();
}

let taught = false;

async function teachCore(): Promise<void> {
  if (taught) return;
  module().loadLanguage(await spanishOfCore());
  taught = true;
}

/** The words to use now, with a redraw when the language changes. */
export const useWords = (): Words => useChanging(current);
export const wordsNow = (): Words => current.now();

/** Fills {0}, {1} ... in. */
export function say(text: string, ...values: Array<string | number>): string {
  return text.replace(/\{(\d)\}/g, (place, index: string) => String(values[Number(index)] ?? place));
}

/** "1 load", "3 loads": `forms` has the word for one and for many, with {0} where the count stands. */
export function count(number: number, forms: { one: string; many: string }): string {
  const rule = new Intl.PluralRules(settings.now().language).select(number);
  return say(rule === "one" ? forms.one : forms.many, number);
}

/** "3 h ago", from an instant in RFC 3339. */
export function ago(instant: string, now = Date.now()): string {
  const { common } = wordsNow();
  const minutes = Math.floor((now - Date.parse(instant)) / 60_000);
  if (minutes < 1) return common.justNow;
  if (minutes < 60) return say(common.minutesAgo, minutes);
  if (minutes < 48 * 60) return say(common.hoursAgo, Math.floor(minutes / 60));
  return say(common.daysAgo, Math.floor(minutes / (24 * 60)));
}

/** A civil date of this place, 2031-05-14. */
export function today(at = new Date()): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** An instant with this place's offset: 2031-05-14T06:30:00-05:00. */
export function instant(at = new Date()): string {
  const two = (number: number) => String(number).padStart(2, "0");
  const east = -at.getTimezoneOffset();
  const offset = `${east < 0 ? "-" : "+"}${two(Math.floor(Math.abs(east) / 60))}:${two(Math.abs(east) % 60)}`;
  return `${today(at)}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}${offset}`;
}

/** A date as people read it: 14 May 2031. */
export function showDate(date: string): string {
  const day = new Date(`${date.slice(0, 10)}T12:00:00`);
  if (Number.isNaN(day.getTime())) return date;
  return new Intl.DateTimeFormat(settings.now().language, { day: "numeric", month: "short", year: "numeric" }).format(day);
}

/** A time of day: 06:30. */
export function showTime(at: string): string {
  const time = new Date(at);
  if (Number.isNaN(time.getTime())) return at;
  return new Intl.DateTimeFormat(settings.now().language, { hour: "2-digit", minute: "2-digit", hour12: false }).format(time);
}
