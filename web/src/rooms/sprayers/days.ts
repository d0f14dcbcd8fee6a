// Days between civil dates.
const dayMilliseconds = 86_400_000;

/** Whole days from one civil date to another; undefined when one is not a date. */
export function daysBetween(from: string, to: string): number | undefined {
  const [first, last] = [Date.parse(`${from.slice(0, 10)}T00:00:00Z`), Date.parse(`${to.slice(0, 10)}T00:00:00Z`)];
  const days = Math.round((last - first) / dayMilliseconds);
  return Number.isNaN(days) ? undefined : days;
}
