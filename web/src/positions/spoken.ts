// A sentence for somebody whose eyes are on the ground. Never the only sign: the screen says the same.
import { settings } from "@/app/settings";
import { signal } from "@/parts/signals";

export function sayAloud(sentence: string): void {
  if (!settings.now().sound) return;
  signal.end();
  if (typeof speechSynthesis === "undefined") return;
  const spoken = new SpeechSynthesisUtterance(sentence);
  spoken.lang = settings.now().language;
  speechSynthesis.speak(spoken);
}
