// Where in the app we are: the part of the address behind "#", so that any static host can serve it.
import { changing, useChanging } from "./changing";

/** "#/sprayers/ID/calibrate" is ["sprayers", "ID", "calibrate"]. */
function parts(): string[] {
  const path = location.hash.startsWith("#/") ? location.hash.slice(2) : "";
  return path.split("/").filter(Boolean).map(decodeURIComponent);
}

const route = changing(parts());
addEventListener("hashchange", () => {
  route.set(parts());
  scrollTo(0, 0);
});

export const useRoute = (): string[] => useChanging(route);

export const address = (...path: string[]): string => `#/${path.map(encodeURIComponent).join("/")}`;

export function go(...path: string[]): void {
  location.hash = address(...path);
}

/** As `go`, but the back button skips the place we leave: for a form that was saved. */
export function goInstead(...path: string[]): void {
  history.replaceState(null, "", address(...path));
  route.set(parts());
  scrollTo(0, 0);
}
