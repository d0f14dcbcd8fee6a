import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, go } from "@/app/route";
import { openFormNames } from "@/notebook/forms";
import { newId, useThings } from "@/notebook/notebook";
import { Caution, Section, ThingList, ThingRow } from "@/parts/list";
import { count, say, showDate, useWords } from "@/words/words";
import { classKey, useClass } from "./class_form";
import { classType } from "./kept_class";

export function FrontPage(): JSX.Element {
  const { classRoom, common } = useWords();
  const going = openFormNames().filter((name) => /^class\/[0-9a-f-]{36}$/.test(name)).map((name) => name.slice("class/".length));
  const kept = useThings("attachment").filter(({ fields }) => fields.type === classType);
  return (
    <main>
      <PageHead title={classRoom.title} />
      <Section title={classRoom.together}>
        <p>{classRoom.togetherIntro}</p>
        <Caution>
          <p>{classRoom.water}</p>
        </Caution>
        <button type="button" class="button main wide" onClick={() => go("class", "group", newId())}>
          {classRoom.newClass}
        </button>
        {(going.length > 0 || kept.length > 0) && (
          <ThingList>
            {[...going.map((id) => <GoingRow key={classKey(id)} id={id} />), ...kept.map(({ id, fields }) => <ThingRow key={id} href={address("class", "kept", id)} title={fields.name} note={fields.taken && showDate(fields.taken)} end={common.saved} />)]}
          </ThingList>
        )}
      </Section>
      <Section title={classRoom.practice}>
        <p>{classRoom.practiceIntro}</p>
        <a class="button wide" href={address("class", "practice")}>
          {classRoom.practiceGo}
        </a>
      </Section>
      <Section title={classRoom.sheets}>
        <p>{classRoom.worksheetIntro}</p>
        <a class="button wide" href={address("class", "worksheet")}>
          {classRoom.worksheetGo}
        </a>
      </Section>
    </main>
  );
}

function GoingRow({ id }: { id: string }): JSX.Element {
  const { classRoom } = useWords();
  const { value } = useClass(id);
  return <ThingRow href={address("class", "group", id)} title={value.name || classRoom.unnamed} note={say("{0}", count(value.learners.length, classRoom.learnerCount))} end={classRoom.goingOn} />;
}
