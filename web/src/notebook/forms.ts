// Half-filled forms outlive a reload, a crash and a dead battery: each change goes to the database at
// once, and the form begins where it was left.
import { useCallback, useState } from "preact/hooks";
import { withDatabase } from "./database";

const kept = new Map<string, unknown>();

/** Reads the forms that were left open. Call once, before the first screen. */
export async function openForms(): Promise<void> {
  for (const row of await withDatabase((open) => open.getAll("forms"))) kept.set(row.key, row.value);
}

function keep(key: string, value: unknown): void {
  kept.set(key, value);
  // A full disk must not stop the typing; the save button will say so.
  void withDatabase((open) => open.put("forms", { key, value, at: Date.now() })).catch(() => undefined);
}

function drop(key: string): void {
  kept.delete(key);
  void withDatabase((open) => open.delete("forms", key)).catch(() => undefined);
}

export interface Form<T> {
  value: T;
  /** Sets some fields, or all by a function of the value before. */
  set: (change: Partial<T> | ((before: T) => T)) => void;
  /** Forgets what was typed: after saving, or on purpose. */
  clear: () => void;
  /** True when it holds something from before this visit. */
  resumed: boolean;
}

/** A form under a name ("calibrate/ID"). `first` is what an empty one holds. */
export function useForm<T extends object>(key: string, first: T): Form<T> {
  const [, redraw] = useState(0);
  const [resumed] = useState(() => kept.has(key));
  const value = { ...first, ...(kept.get(key) as Partial<T> | undefined) };
  const set = useCallback(
    (change: Partial<T> | ((before: T) => T)) => {
      const before = { ...first, ...(kept.get(key) as Partial<T> | undefined) };
      keep(key, typeof change === "function" ? change(before) : { ...before, ...change });
      redraw((count) => count + 1);
    },
    [key],
  );
  const clear = useCallback(() => {
    drop(key);
    redraw((count) => count + 1);
  }, [key]);
  return { value, set, clear, resumed };
}

/** Names of the forms that hold something, newest last: for "you were in the middle of ...". */
export const openFormNames = (): string[] => [...kept.keys()];
