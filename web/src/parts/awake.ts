// Keeps the screen lit while something is timed, where the phone allows it.
import { useEffect } from "preact/hooks";

export function useAwake(on: boolean): void {
  useEffect(() => {
    if (!on || !("wakeLock" in navigator)) return;
    let lock: WakeLockSentinel | undefined;
    let gone = false;
    const take = () => {
      if (document.visibilityState !== "visible") return;
      navigator.wakeLock
        .request("screen")
        .then((taken) => {
          if (gone) void taken.release();
          else lock = taken;
        })
        .catch(() => undefined); // saving battery: the timer goes on all the same
    };
    take();
    document.addEventListener("visibilitychange", take); // the lock is lost when the page is hidden
    return () => {
      gone = true;
      document.removeEventListener("visibilitychange", take);
      void lock?.release();
    };
  }, [on]);
}
