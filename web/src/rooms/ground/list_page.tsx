import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { show } from "@/core/quantity";
import { things, useThings } from "@/notebook/notebook";
import type { Stand, Thing } from "@/notebook/things";
import { Section, ThingList, ThingRow } from "@/parts/list";
import { useWords } from "@/words/words";
import { withSpread } from "./ground_of";

export function ListPage(): JSX.Element {
  const { ground } = useWords();
  const stands = useThings("stand");
  const owners = useThings("landowner");
  return (
    <main>
      <PageHead title={ground.title} />
      <ThingList empty={ground.none}>
        {stands.map((stand) => (
          <ThingRow key={stand.id} href={address("ground", stand.id)} title={stand.fields.name} note={noteOf(stand, ground.how)} end={areaOf(stand.fields)} />
        ))}
      </ThingList>
      <Section title={ground.newStand}>
        <div class="ways">
          <Way to="file" title={ground.fromFile} hint={ground.fromFileHint} />
          <Way to="walk" title={ground.walk} hint={ground.walkHint} />
          <Way to="typed" title={ground.typed} hint={ground.typedHint} />
        </div>
      </Section>
      <a class="button wide" href={address("ground", "landowners")}>
        {ground.landowners} ({owners.length})
      </a>
    </main>
  );
}

function Way({ to, title, hint }: { to: string; title: string; hint: string }): JSX.Element {
  return (
    <a class="button way" href={address("ground", to)}>
      <span>
        {title}
        <small>{hint}</small>
      </span>
    </a>
  );
}

function noteOf({ fields }: Thing<"stand">, how: Record<Stand["how"], string>): string {
  const owner = things("landowner").find(({ id }) => id === fields.landowner)?.fields.name;
  return [owner, fields.place, how[fields.how]].filter(Boolean).join(" · ");
}

function areaOf(stand: Stand): string {
  return stand.answer?.area === undefined ? (stand.typed_area ?? "") : withSpread(stand.answer.area) || show(stand.answer.area);
}
