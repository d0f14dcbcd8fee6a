// The room of the class: learners side by side, practice problems, sheets to print.
import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { PaperPage } from "@/paper/paper_page";
import { ClassPage } from "./class_page";
import { FrontPage } from "./front_page";
import { KeptClassPage } from "./kept_class_page";
import { LearnerPage } from "./learner_page";
import { PracticePage } from "./practice_page";
import { SheetPage } from "./sheet_page";

export function Room({ path }: RoomProps): JSX.Element {
  const [first, second, third, fourth] = path;
  if (first === "group" && second !== undefined) {
    return third === "learner" ? <LearnerPage key={`${second}/${fourth}`} group={second} number={Number(fourth)} /> : <ClassPage key={second} id={second} />;
  }
  if (first === "kept" && second !== undefined) return <KeptClassPage key={second} id={second} />;
  if (first === "practice") return second === "sheet" || second === "key" ? <SheetPage key={second} withKey={second === "key"} /> : <PracticePage />;
  if (first === "worksheet") return <PaperPage of="worksheet" id={undefined} back="class" />;
  return <FrontPage />;
}
