import type { JSX } from "preact";
import type { RoomProps } from "@/app/app";
import { PageHead } from "@/app/page_head";
import { useWords } from "@/words/words";

export function Room(_props: RoomProps): JSX.Element {
  const { classRoom } = useWords();
  return (
    <main>
      <PageHead title={classRoom.title} />
    </main>
  );
}
