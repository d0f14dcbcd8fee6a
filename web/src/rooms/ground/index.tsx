import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { FilePage } from "./file_page";
import { LandownerPage, LandownersPage } from "./landowner_pages";
import { ListPage } from "./list_page";
import { StandPage } from "./stand_page";
import { TypedPage } from "./typed_page";
import { WalkPage } from "./walk_page";

export function Room({ path }: RoomProps): JSX.Element {
  const [first, second] = path;
  if (first === undefined) return <ListPage />;
  if (first === "file") return <FilePage />;
  if (first === "walk") return <WalkPage />;
  if (first === "typed") return <TypedPage />;
  if (first === "landowners") return second === undefined ? <LandownersPage /> : <LandownerPage id={second} />;
  return <StandPage id={first} editing={second === "edit"} />;
}
