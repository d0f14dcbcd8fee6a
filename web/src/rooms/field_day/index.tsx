import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThing } from "@/notebook/notebook";
import { useWords } from "@/words/words";
import { ClosePage } from "./close_page";
import { DayPage } from "./day_page";
import { HandPage } from "./hand_page";
import { LoadPage } from "./load_page";
import { NotePage } from "./note_page";
import { PickPage } from "./pick_page";
import { ReadingPage } from "./reading_page";

const pages = { reading: ReadingPage, load: LoadPage, hand: HandPage, note: NotePage, close: ClosePage };

export function Room({ path }: RoomProps): JSX.Element {
  const [id, page] = path;
  return id === undefined ? <PickPage /> : <OfJob key={id} id={id} page={page} />;
}

function OfJob({ id, page }: { id: string; page: string | undefined }): JSX.Element {
  const { fieldDay, common } = useWords();
  const job = useThing("job", id);
  if (job === undefined) {
    return (
      <main>
        <PageHead title={fieldDay.title} back={address("field-day")} />
        <p>{common.notFound}</p>
      </main>
    );
  }
  const Page = page === undefined ? DayPage : (pages[page as keyof typeof pages] ?? DayPage);
  return <Page job={job} />;
}
