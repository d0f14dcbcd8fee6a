// What the app itself has to say, above the page: a newer version waits; two phones disagreed.
import type { JSX } from "preact";
import { conflicts, useNotebook } from "@/notebook/notebook";
import { count, useWords } from "@/words/words";
import { useChanging } from "./changing";
import { dropped } from "./drop";
import { takeUpdate, waitingUpdate } from "./offline";
import { address } from "./route";

export function Notices(): JSX.Element | null {
  useNotebook();
  const { sync } = useWords();
  const update = useChanging(waitingUpdate);
  const said = useChanging(dropped);
  const collided = conflicts().length;
  if (update === undefined && collided === 0 && said.length === 0) return null;
  return (
    <div class="notices" role="status">
      {update && (
        <p>
          {sync.updateWaits}
          <button type="button" class="button" onClick={takeUpdate}>
            {sync.updateTake}
          </button>
        </p>
      )}
      {said.map((line, index) => (
        <p key={index}>{line}</p>
      ))}
      {collided > 0 && (
        <p>
          {count(collided, sync.conflictsFound)}
          <a class="button" href={address("phone", "conflicts")}>
            {sync.conflictsLook}
          </a>
        </p>
      )}
    </div>
  );
}
