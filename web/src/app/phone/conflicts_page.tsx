import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { conflicts, thing, useNotebook } from "@/notebook/notebook";
import { ThingList, ThingRow } from "@/parts/list";
import { useWords } from "@/words/words";

/** What two devices wrote that does not fit together, each with the record it is about. */
export function ConflictsPage(): JSX.Element {
  useNotebook();
  const { sync } = useWords();
  return (
    <main>
      <PageHead title={sync.conflictsTitle} back={address("phone")} />
      <p>{sync.conflictsIntro}</p>
      <ThingList empty={sync.conflictsNone}>
        {conflicts().map(({ entry, record, text, field }) => (
          <ThingRow key={`${entry} ${field ?? ""}`} href={address("records", record)} title={thing("record", record)?.fields.name ?? record} note={text} />
        ))}
      </ThingList>
    </main>
  );
}
