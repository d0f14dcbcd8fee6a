// A value that changes and tells who looks: all that the app needs of a state library.
import { useEffect, useState } from "preact/hooks";

export interface Changing<T> {
  now(): T;
  set(value: T): void;
  listen(listener: () => void): () => void;
}

export function changing<T>(first: T): Changing<T> {
  let value = first;
  const listeners = new Set<() => void>();
  return {
    now: () => value,
    set(next) {
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The value, with a redraw at each change. */
export function useChanging<T>(source: Changing<T>): T {
  const [value, setValue] = useState(source.now());
  useEffect(() => {
    setValue(() => source.now());
    return source.listen(() => setValue(() => source.now()));
  }, [source]);
  return value;
}
