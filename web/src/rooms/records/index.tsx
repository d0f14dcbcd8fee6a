// The room of records: a season at a glance, a record filled in, closed, amended; and paper.
import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { PaperPage } from "@/paper/paper_page";
import { AmendPage } from "./amend_page";
import { ClosePage } from "./close_page";
import { EditPage, NewPage } from "./form_page";
import { HistoryPage } from "./history_page";
import { PickJobPage } from "./pick_job_page";
import { RecordPage } from "./record_page";
import { SeasonPage } from "./season_page";

export function Room({ path }: RoomProps): JSX.Element {
  const [first, second, third] = path;
  if (first === undefined) return <SeasonPage />;
  if (first === "paper") return <PaperPage key={path.join("/")} of={second ?? ""} id={third} back="records" />;
  if (first === "new") return second === undefined ? <PickJobPage /> : <NewPage key={second} job={second} />;
  if (second === "edit") return <EditPage key={first} id={first} />;
  if (second === "close") return <ClosePage key={first} id={first} />;
  if (second === "amend") return <AmendPage key={first} id={first} />;
  if (second === "history") return <HistoryPage key={first} id={first} />;
  return <RecordPage key={first} id={first} />;
}
