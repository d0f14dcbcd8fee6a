// Room Sprayers: the list, one sprayer, and what is done with it.
import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { address } from "@/app/route";
import { PageHead } from "@/app/page_head";
import { useThing } from "@/notebook/notebook";
import { useWords } from "@/words/words";
import { CalibratePage } from "./calibrate/calibrate_page";
import { EditPage } from "./edit_page";
import { EntryPage } from "./history/entry_page";
import { HistoryPage } from "./history/history_page";
import { ListPage } from "./list_page";
import { SprayerPage } from "./sprayer_page";
import { TargetPage } from "./target/target_page";
import { TipPage } from "./tips/tip_page";

export function Room({ path }: RoomProps): JSX.Element {
  const [id, act, rest] = path;
  if (id === undefined) return <ListPage />;
  if (id === "new") return <EditPage key="new" />;
  return <OfOne key={id} id={id} act={act} rest={rest} />;
}

function OfOne({ id, act, rest }: { id: string; act: string | undefined; rest: string | undefined }): JSX.Element {
  const sprayer = useThing("sprayer", id);
  const { sprayers, common } = useWords();
  if (sprayer === undefined) {
    return (
      <main>
        <PageHead title={sprayers.title} back={address("sprayers")} />
        <p class="empty">{common.notFound}</p>
      </main>
    );
  }
  switch (act) {
    case "change":
      return <EditPage sprayer={sprayer} />;
    case "calibrate":
      return <CalibratePage sprayer={sprayer} step={rest} />;
    case "tips":
      return <TipPage sprayer={sprayer} />;
    case "target":
      return <TargetPage sprayer={sprayer} />;
    case "history":
      return rest === undefined ? <HistoryPage sprayer={sprayer} /> : <EntryPage sprayer={sprayer} entry={rest} />;
    default:
      return <SprayerPage sprayer={sprayer} />;
  }
}
