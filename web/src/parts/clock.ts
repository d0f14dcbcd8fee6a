// The time of day as a value that redraws what runs by it.
import { useEffect, useState } from "preact/hooks";

/** Milliseconds since 1970, fresh ten times a second while `on`. */
export function useNow(on: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!on) return;
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), 100);
    return () => clearInterval(timer);
  }, [on]);
  return on ? Math.max(now, 0) : now;
}
