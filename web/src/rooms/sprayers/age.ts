// How people say how long ago a civil date was.
import { say, wordsNow } from "@/words/words";
import { daysBetween } from "./days";

/** "3 days ago". A date ahead of today is said as the date. */
export function sayAge(day: string, now: string): string {
  const { common } = wordsNow();
  const days = daysBetween(day, now);
  if (days === undefined || days < 0) return day;
  if (days === 0) return common.today.toLowerCase();
  return days === 1 ? common.yesterday : say(common.daysAgo, days);
}
