// What the app itself has to say, above the page: a newer version waits; two phones disagreed.
import type { JSX } from "preact";
import { conflicts, thing, useNotebook } from "@/notebook/notebook";
import { count, say, useWords } from "@/words/words";
import { useChanging } from "./changing";
import { dropped } from "./drop";
import { takeUpdate, waitingUpdate } from "./offline";
import { useRecording } from "@/positions/recorder";
import { address, useRoute } from "./route";

export function Notices(): JSX.Element | null {
  useNotebook();
  const { sync } = useWords();
  const update = useChanging(waitingUpdate);
  const said = useChanging(dropped);
  const collided = conflicts().length;
  const recorded = <RecordingNotice />;
  if (update === undefined && collided === 0 && said.length === 0) return recorded;
  return (
    <>
      {recorded}
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
    </>
  );
}

/** In any other room: something is being recorded, and where. */
function RecordingNotice(): JSX.Element | null {
  const { fieldDay } = useWords();
  const found = useRecording();
  const route = useRoute();
  if (found === undefined) return null;
  const { use, subject } = found.head;
  const place = use === "pass" ? ["field-day", subject] : ["ground", "walk"];
  if (route[0] === place[0] && (use === "pass" ? route[1] === subject : route[1] === "walk")) return null;
  return (
    <div class="notices" role="status">
      <p>
        {use === "pass" ? say(fieldDay.recordingNotice, thing("job", subject)?.fields.name ?? "") : fieldDay.edgeNotice}
        <a class="button" href={address(...place)}>
          {fieldDay.recordingLook}
        </a>
      </p>
    </div>
  );
}
