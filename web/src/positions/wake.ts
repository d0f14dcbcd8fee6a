// Keeps the screen on while something is recorded: phones stop giving positions to a dark page.
import { changing } from "@/app/changing";

/** True while the phone has promised to keep the screen on. */
export const awake = changing(false);
let lock: WakeLockSentinel | undefined;
let wanted = false;

async function ask(): Promise<void> {
  if (!wanted || lock !== undefined || document.visibilityState !== "visible" || navigator.wakeLock === undefined) return;
  try {
    const got = await navigator.wakeLock.request("screen");
    if (!wanted) return void got.release();
    lock = got;
    awake.set(true);
    got.addEventListener("release", () => {
      lock = undefined;
      awake.set(false);
    });
  } catch {
    awake.set(false); // low battery, or not allowed: the page says that the screen may go dark
  }
}

// The system takes the lock away when the page is hidden; it is asked for again on coming back.
document.addEventListener("visibilitychange", () => void ask());

export function keepAwake(keep: boolean): void {
  wanted = keep;
  if (keep) return void ask();
  void lock?.release();
  lock = undefined;
  awake.set(false);
}
