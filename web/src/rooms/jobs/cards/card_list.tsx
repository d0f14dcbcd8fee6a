// All label cards of the notebook.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useThings } from "@/notebook/notebook";
import { Caution, ThingList, ThingRow } from "@/parts/list";
import { say, showDate, useWords } from "@/words/words";

export function CardList(): JSX.Element {
  const { jobs } = useWords();
  const cards = useThings("product_card");
  return (
    <main>
      <PageHead title={jobs.cards.title} back={address("jobs")} />
      <Caution>
        <p>{jobs.cards.youType}</p>
      </Caution>
      <a class="button main wide" href={address("jobs", "cards", "new")}>
        {jobs.cards.new}
      </a>
      <ThingList empty={jobs.cards.empty}>
        {cards.map(({ id, fields }) => (
          <ThingRow
            key={id}
            href={address("jobs", "cards", id)}
            title={fields.card?.name ?? fields.name ?? jobs.noName}
            note={[fields.card?.registration, fields.label_date ? say(jobs.cards.labelOf, showDate(fields.label_date)) : undefined].filter(Boolean).join(" · ")}
          />
        ))}
      </ThingList>
    </main>
  );
}
