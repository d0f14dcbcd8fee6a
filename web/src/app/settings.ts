// What one person set on this phone. Settings stay here; they do not travel with the notebook.
import { changing, useChanging } from "./changing";

export type Units = "us" | "metric";
export type Language = "en" | "es";

export interface Settings {
  units: Units;
  language: Language;
  gloves: boolean;
  sound: boolean;
  /** Who writes: stands beside every entry. Empty until somebody said who. */
  author: string;
}

const key = "swathbook settings";

function firstSettings(): Settings {
  const spanish = navigator.language.toLowerCase().startsWith("es");
  const american = /^en-(US|LR)|^es-(US|PR)|^my/.test(navigator.language) || navigator.language === "en";
  return { units: american ? "us" : "metric", language: spanish ? "es" : "en", gloves: false, sound: true, author: "" };
}

function read(): Settings {
  const first = firstSettings();
  try {
    return { ...first, ...(JSON.parse(localStorage.getItem(key) ?? "{}") as Partial<Settings>) };
  } catch {
    return first; // a damaged or forbidden store: begin afresh, nothing of the notebook is in it
  }
}

export const settings = changing<Settings>(read());

export function changeSettings(change: Partial<Settings>): void {
  settings.set({ ...settings.now(), ...change });
  try {
    localStorage.setItem(key, JSON.stringify(settings.now()));
  } catch {
    // Full or forbidden: the setting holds until the page closes.
  }
}

export const useSettings = (): Settings => useChanging(settings);
