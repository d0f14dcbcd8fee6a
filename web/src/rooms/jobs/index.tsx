// Jobs: from the stand, the sprayer and the labels to loads, counts and a card for the mixing site.
import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { CardList } from "./cards/card_list";
import { CardForm } from "./cards/card_form";
import { CardPage } from "./cards/card_page";
import { JobForm } from "./job_form";
import { JobList } from "./job_list";
import { JobPage } from "./job_page";
import { ToolList, ToolPage } from "./tools/tool_pages";

export function Room({ path }: RoomProps): JSX.Element {
  const [first, second, third] = path;
  if (first === undefined) return <JobList />;
  if (first === "new") return <JobForm key="new" />;
  if (first === "tools") return second === undefined ? <ToolList /> : <ToolPage key={second} name={second} />;
  if (first !== "cards") return <JobPage key={first} id={first} path={path.slice(1)} />;
  if (second === undefined) return <CardList />;
  if (second === "new") return <CardForm key="new" />;
  return third === "edit" ? <CardForm key={second} id={second} /> : <CardPage key={second} id={second} />;
}
