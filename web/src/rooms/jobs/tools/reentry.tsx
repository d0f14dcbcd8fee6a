import type { JSX } from "preact";
import { ask, type Asked } from "@/core/core";
import type { ReentryAct } from "@/core/operations.gen";
import { useForm } from "@/notebook/forms";
import { useThing, useThings } from "@/notebook/notebook";
import { WorkingButton } from "@/parts/answer";
import { TextField, Tick } from "@/parts/fields";
import { Findings, RefusalNote, Sign } from "@/parts/findings";
import { Section } from "@/parts/list";
import { instant, say, showDate, showTime, useWords } from "@/words/words";
import { QuickCard } from "../cards/quick_card";
import { cardsOf } from "../job_data";
import { FormNotices } from "../steps";
import type { ToolProps } from "./tool_pages";

/** When people, stock, hay crews and seed may go back: the longest wait of all labels. */
export function Reentry({ job }: ToolProps): JSX.Element {
  const { common, jobs } = useWords();
  const words = jobs.tools.reentry;
  const cards = useThings("product_card");
  const stand = useThing("stand", job?.fields.stand);
  const ended = useThings("load").flatMap(({ fields }) => (fields.job === job?.id && fields.ended_at ? [fields.ended_at] : [])).sort();
  const first = { place: stand?.fields.name ?? job?.fields.name ?? "", ended: localTime(ended.at(-1)), chosen: (job?.fields.products ?? []).map(({ card_id }) => card_id), slaughter: "", adding: false };
  const { value: form, set, clear, resumed } = useForm(`jobs/reentry/${job?.id ?? "alone"}`, first);
  const cardOf = cardsOf(cards, job?.fields);
  const known = job?.fields.products ?? [];
  const products = form.chosen.flatMap((id) => cardOf({ card_id: id, name: known.find((product) => product.card_id === id)?.name, rate: "" }) ?? []);
  const ready = products.length > 0 && form.ended !== "";
  const asked = ready ? ask("reentry", { products, places: [{ name: form.place || words.thisGround, ended: zoned(form.ended) }], slaughter_planned: form.slaughter === "" ? undefined : zoned(form.slaughter) }) : undefined;
  const toggle = (id: string, on: boolean) => set({ chosen: on ? [...form.chosen, id] : form.chosen.filter((other) => other !== id) });
  return (
    <>
      <FormNotices resumed={resumed} onClear={clear} />
      <TextField label={words.place} required={false} value={form.place} onValue={(place) => set({ place })} />
      <TextField label={words.ended} hint={words.endedHint} type="datetime-local" value={form.ended} onValue={(text) => set({ ended: text })} />
      <fieldset class="field">
        <legend>{words.products}</legend>
        <div>
          {cards.map(({ id, fields }) => (
            <Tick key={id} label={fields.card?.name ?? fields.name ?? jobs.noName} checked={form.chosen.includes(id)} onValue={(on) => toggle(id, on)} />
          ))}
        </div>
      </fieldset>
      {form.adding || cards.length === 0 ? (
        <QuickCard onMade={(id) => set((now) => ({ ...now, adding: false, chosen: [...now.chosen, id] }))} />
      ) : (
        <button type="button" class="button wide" onClick={() => set({ adding: true })}>
          {jobs.plan.newCard}
        </button>
      )}
      <TextField label={words.slaughter} type="datetime-local" required={false} value={form.slaughter} onValue={(slaughter) => set({ slaughter })} />
      {asked && <ReentryAnswerView asked={asked} />}
      {!ready && <p class="not-entered">{say(words.missing, common.notEntered)}</p>}
    </>
  );
}

// The box gives the time of this place; the core wants its zone beside it, and no seconds are needed.
const zoned = (local: string): string => instant(new Date(local));
const localTime = (at: string | undefined): string => (at === undefined ? "" : instant(new Date(at)).slice(0, 16));

function ReentryAnswerView({ asked }: { asked: Asked<"reentry"> }): JSX.Element {
  const { jobs } = useWords();
  const words = jobs.tools.reentry;
  return (
    <section class="plan-answer">
      <RefusalNote of={asked.refusal} />
      <Findings of={asked.findings} />
      {(asked.answer?.places ?? []).map((place) => (
        <Section key={place.name} title={place.name ?? ""}>
          {place.everything_from && <p class="measure fits">{say(words.everything, when(place.everything_from))}</p>}
          <ul class="checks">
            {(place.acts ?? []).map((act) => (
              <ActLine key={act.act} act={act} />
            ))}
          </ul>
        </Section>
      ))}
      <WorkingButton of={asked} title={jobs.tools.names.reentry} />
    </section>
  );
}

const when = (at: string): string => `${showDate(at)}, ${showTime(at)}`;

function ActLine({ act }: { act: ReentryAct }): JSX.Element {
  const { common, jobs } = useWords();
  const words = jobs.tools.reentry;
  const known = act.status === "known" && act.from;
  return (
    <li class={known ? "check within" : "check not_entered"}>
      {known ? <span class="check-ok" aria-hidden="true" /> : <Sign severity="warning" />}
      <div>
        <strong>
          {act.act && words.acts[act.act]}: {known ? when(act.from ?? "") : words.notKnown}
        </strong>
        <p>
          {act.text}
          {act.where && (
            <small>
              {common.source}: {act.product}, {act.where}
            </small>
          )}
        </p>
      </div>
    </li>
  );
}
