// A class that was saved: shown as it was answered then, never computed again.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThing } from "@/notebook/notebook";
import { say, showDate, useWords } from "@/words/words";
import { keptClass, type KeptClass } from "./kept_class";
import { ResultsPart } from "./results_part";

export function KeptClassPage({ id }: { id: string }): JSX.Element {
  const { classRoom, common } = useWords();
  const found = useThing("attachment", id);
  const [kept, setKept] = useState<KeptClass | "gone">();
  const digest = found?.fields.blob;
  useEffect(() => {
    if (digest !== undefined) void keptClass(digest).then((read) => setKept(read ?? "gone"));
  }, [digest]);
  return (
    <main>
      <PageHead title={found?.fields.name ?? classRoom.title} back={address("class")} />
      {found === undefined && <p class="refusal">{common.notFound}</p>}
      {kept === "gone" && <p class="refusal">{classRoom.notHere}</p>}
      {kept !== undefined && kept !== "gone" && (
        <>
          <p class="hint">{say(classRoom.keptOn, showDate(found?.fields.taken ?? ""), kept.model)}</p>
          <ResultsPart asked={kept.asked} />
        </>
      )}
    </main>
  );
}
