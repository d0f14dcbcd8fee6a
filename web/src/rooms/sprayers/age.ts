// How people say how long ago a civil date was.
import { say, showDate, wordsNow } from "@/words/words";
import { daysBetween } from "./days";

/** "3 days ago". A date ahead of today is said as the date. */
export function sayAge(day: string, now: string): string {
  const { common } = wordsNow();
  const days = daysBetween(day, now);
  if (days === undefined || days < 0) return showDate(day);
  if (days === 0) return common.today.toLowerCase();
  return days === 1 ? common.yesterday : say(common.daysAgo, days);
}

/** "3 days ago, May 14, 2031". */
export function sayDay(day: string, now: string): string {
  const [age, date] = [sayAge(day, now), showDate(day)];
  return age === date ? date : `${age}, ${date}`;
}
