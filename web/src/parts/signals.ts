// Beeps and buzzes for timed work. Never the only sign: the screen shows the same, and phones may be mute.
import { settings } from "@/app/settings";

let audio: AudioContext | undefined;

/** Call in the press that starts a timed act: browsers give sound only to a press. */
export function wakeSound(): void {
  if (!settings.now().sound || typeof AudioContext === "undefined") return;
  audio ??= new AudioContext();
  void audio.resume().catch(() => undefined);
}

function beep(hertz: number, seconds: number): void {
  if (!settings.now().sound || audio?.state !== "running") return;
  const tone = audio.createOscillator();
  const loudness = audio.createGain();
  tone.frequency.value = hertz;
  loudness.gain.setValueAtTime(0.5, audio.currentTime);
  loudness.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + seconds);
  tone.connect(loudness).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + seconds);
}

const buzz = (pattern: number | number[]): void => {
  if (typeof navigator.vibrate === "function") navigator.vibrate(pattern);
};

/** A short one while counting down, a high one to begin, a long low one to end. */
export const signal = {
  tick: () => beep(660, 0.12),
  begin: () => {
    beep(1320, 0.5);
    buzz(300);
  },
  end: () => {
    beep(440, 1);
    buzz([400, 120, 400]);
  },
};
