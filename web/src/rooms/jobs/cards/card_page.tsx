// A label card to read: every limit with its place on the label, and every one that nobody typed.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import type { DropletLimitClass } from "@/core/operations.gen";
import { useThing } from "@/notebook/notebook";
import { Caution, Section } from "@/parts/list";
import { say, showDate, useWords } from "@/words/words";
import { groups, ingredientText, limitText, type LimitField } from "./card_data";

const groupNames = ["rates", "caps", "weather", "waits", "wear"] as const;

export function CardPage({ id }: { id: string }): JSX.Element {
  const { common, jobs } = useWords();
  const found = useThing("product_card", id);
  const card = found?.fields.card;
  if (found === undefined || card === undefined) {
    return (
      <main>
        <PageHead title={jobs.cards.title} back={address("jobs", "cards")} />
        <div class="empty">{common.notFound}</div>
      </main>
    );
  }
  const rows: Array<[string, string | undefined]> = [
    [jobs.cards.registration, card.registration],
    [jobs.cards.labelDate, found.fields.label_date && showDate(found.fields.label_date)],
    [jobs.cards.form, jobs.cards.forms[card.form ?? "liquid"]],
    [jobs.cards.formulation, card.formulation && jobs.cards.formulations[card.formulation]],
    ...(card.ingredients ?? []).map((one): [string, string] => [one.name, [ingredientText(one).acid, ingredientText(one).active].filter(Boolean).join(", ")]),
  ];
  return (
    <main>
      <PageHead title={card.name} back={address("jobs", "cards")} />
      <Caution>
        <p>{common.labelIsLaw}</p>
      </Caution>
      <dl class="values">
        {rows.map(([name, value], index) => (
          <div key={index}>
            <dt>{name}</dt>
            <dd>{value || common.notEntered}</dd>
          </div>
        ))}
      </dl>
      {groupNames.map((group) => (
        <Section key={group} title={jobs.cards.steps[group]}>
          <dl class="values limits-read">
            {groups[group].map((field) => (
              <ReadLimit key={field.name} field={field} card={card} />
            ))}
            {group === "wear" &&
              (card.limits?.other ?? []).map((one, index) => (
                <div key={index}>
                  <dt>{say(jobs.cards.otherNumber, index + 1)}</dt>
                  <dd>
                    {one.text} <small>{one.where}</small>
                  </dd>
                </div>
              ))}
          </dl>
        </Section>
      ))}
      <a class="button main wide" href={address("jobs", "cards", id, "edit")}>
        {jobs.cards.edit}
      </a>
    </main>
  );
}

function ReadLimit({ field, card }: { field: LimitField; card: { limits?: Parameters<typeof limitText>[0] } }): JSX.Element {
  const { common, jobs } = useWords();
  const found = limitText(card.limits, field);
  const value = field.sort === "droplets" && found?.value ? jobs.cards.droplets[found.value as DropletLimitClass] : found?.value;
  const dry = found?.until_dry ? jobs.cards.untilDry : undefined;
  return (
    <div>
      <dt>{jobs.limits[field.name]}</dt>
      <dd class={found === undefined ? "not-entered" : undefined}>
        {found === undefined ? common.notEntered : [value, dry].filter(Boolean).join("; ")}
        {found?.where && <small>{found.where}</small>}
      </dd>
    </div>
  );
}
