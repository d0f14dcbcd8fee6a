// A copy of a notebook dropped anywhere on the page is taken in. Rooms that take other files by dropping
// (maps) stop the event themselves.
import { changing } from "./changing";
import { takeIn } from "./phone/take_in";

/** What came of the last drop, for the notices. */
export const dropped = changing<string[]>([]);

const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") === true;

export function startDrop(): void {
  addEventListener("dragover", (event) => hasFiles(event) && event.preventDefault());
  addEventListener("drop", (event) => {
    if (event.defaultPrevented || !hasFiles(event)) return;
    event.preventDefault();
    void Promise.all([...(event.dataTransfer?.files ?? [])].map(takeIn)).then((lines) => dropped.set(lines.flat()));
  });
}
