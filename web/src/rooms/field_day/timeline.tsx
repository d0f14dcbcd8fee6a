// What happened, newest first: readings, loads, passes, notes, photos.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { blob, useNotebook, things } from "@/notebook/notebook";
import type { Attachment, Thing } from "@/notebook/things";
import { Section } from "@/parts/list";
import { count, say, showDate, showTime, today, useWords, type Words } from "@/words/words";
import { instantKey, loadsOf, newestFirst, passesOf, readingsOf } from "./day_data";

interface Event {
  key: string;
  at: string;
  text: string;
  note?: string;
  photo?: Attachment;
}

function eventsOf(job: string, words: Words["fieldDay"]): Event[] {
  const { event } = words;
  const events: Event[] = readingsOf(job).map(({ id, fields }) => {
    const verdict = words.verdict[(fields.verdict ?? "not_known") as "go" | "stop" | "not_known"];
    return { key: id, at: fields.taken, text: say(event.reading, verdict), note: readingWords(fields.request) };
  });
  for (const { id, fields } of loadsOf(job)) {
    if (fields.mixed_at) events.push({ key: `${id} m`, at: fields.mixed_at, text: say(event.load, fields.number, fields.mix ?? ""), note: fields.notes });
    const left = fields.left_over && say(event.leftOver, fields.left_over);
    if (fields.ended_at) events.push({ key: `${id} e`, at: fields.ended_at, text: say(event.loadEnded, fields.number), note: left });
  }
  for (const pass of passesOf(job)) events.push(passEvent(pass, words));
  for (const { id, fields } of things("attachment")) {
    if (fields.of !== job || fields.of_kind !== "job") continue;
    const isNote = fields.type === "text/plain";
    events.push({ key: id, at: fields.taken ?? "", text: isNote ? event.note : event.photo, note: fields.notes, photo: isNote ? undefined : fields });
  }
  return events.sort((a, b) => newestFirst(instantKey(a.at), instantKey(b.at)));
}

function readingWords(request: { readings?: Array<{ wind?: Quantity; gust?: Quantity; wind_from?: string; temperature?: Quantity; humidity?: Quantity }> }): string {
  const { wind, gust, wind_from, temperature, humidity } = request.readings?.[0] ?? {};
  return [show(wind), gust && `(${show(gust)})`, wind_from, show(temperature), show(humidity)].filter(Boolean).join(" ");
}

function passEvent({ id, fields }: Thing<"pass">, { event }: Words["fieldDay"]): Event {
  const { swept_area } = (fields.swept ?? {}) as { swept_area?: Quantity };
  const gaps = (fields.gaps ?? []).length;
  const notes = [fields.by_hand && say(event.handPass, fields.by_hand.count, fields.by_hand.length), gaps > 0 && count(gaps, event.gaps)];
  return {
    key: id,
    at: fields.ended_at ?? fields.begun_at,
    text: fields.ended_at ? say(event.pass, show(swept_area) || event.noArea) : event.passOpen,
    note: notes.filter(Boolean).join(" · "),
  };
}

export function Timeline({ job }: { job: string }): JSX.Element {
  useNotebook();
  const { fieldDay } = useWords();
  const events = eventsOf(job, fieldDay);
  return (
    <Section title={fieldDay.today}>
      {events.length === 0 && <p class="hint">{fieldDay.nothingYet}</p>}
      <ol class="timeline">
        {events.map((event) => (
          <li key={event.key}>
            <time>
              {showTime(event.at)}
              {today(new Date(event.at)) !== today() && <small>{showDate(event.at)}</small>}
            </time>
            <span>
              <strong>{event.text}</strong>
              {event.note && <small>{event.note}</small>}
              {event.photo && <Photo of={event.photo} />}
            </span>
          </li>
        ))}
      </ol>
    </Section>
  );
}

function Photo({ of }: { of: Attachment }): JSX.Element | null {
  const [place, setPlace] = useState<string>();
  useEffect(() => {
    let made: string | undefined;
    let gone = false;
    void blob(of.blob).then((found) => {
      if (found === undefined || gone) return;
      made = URL.createObjectURL(new Blob([found.bytes], { type: of.type }));
      setPlace(made);
    });
    return () => {
      gone = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [of.blob]);
  return place === undefined ? null : <img class="timeline-photo" src={place} alt={of.notes || of.name} />;
}
