// The fields of a record in groups: those an authority asks for and those that hold something; the rest on
// demand. Each says where its value is from.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import { Choice, TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import type { RecordDraft } from "./record_draft";
import { sourceWords } from "./source_words";
import { saysYes } from "./standing";
import { fields, groups, labelOf, type Field } from "./tables";

export type Need = "missing" | "decide" | "advised" | "held";

/** How strongly each field is asked for, and by whom. */
export function needsOf(asked: Asked<"record-check"> | undefined): Map<string, { need: Need; by: string[]; notes: string[] }> {
  const needs = new Map<string, { need: Need; by: string[]; notes: string[] }>();
  const order: Need[] = ["missing", "decide", "advised", "held"];
  for (const check of asked?.answer?.checks ?? []) {
    if (check.standing !== "in_force" && check.standing !== "unsettled") continue;
    const lists = { missing: check.missing, decide: check.to_decide, advised: check.advised, held: check.present };
    for (const need of order) {
      for (const { key = "", note } of lists[need] ?? []) {
        const known = needs.get(key) ?? { need, by: [], notes: [] };
        if (order.indexOf(need) < order.indexOf(known.need)) known.need = need;
        if (!known.by.includes(check.authority ?? "")) known.by.push(check.authority ?? "");
        if (note && !known.notes.includes(note)) known.notes.push(note);
        needs.set(key, known);
      }
    }
  }
  return needs;
}

interface Props {
  draft: RecordDraft;
  asked: Asked<"record-check"> | undefined;
  /** Every field there is, not only those asked for. */
  all: boolean;
  onChange: (change: Partial<RecordDraft> | ((before: RecordDraft) => RecordDraft)) => void;
}

export function FieldsPart({ draft, asked, all, onChange }: Props): JSX.Element {
  const { records } = useWords();
  const needs = needsOf(asked);
  const isShown = ({ key }: Field) => all || needs.has(key) || key in draft.values || ["date", "time_start", "time_end", "rup_flag"].includes(key);
  const put = (key: string, text: string) =>
    onChange((before) => {
      const { [key]: _source, ...from } = before.from;
      return { ...before, values: { ...before.values, [key]: text }, from };
    });
  return (
    <>
      {groups.map((group) => {
        const shown = fields.filter((field) => field.group === group && isShown(field));
        if (shown.length === 0) return null;
        return (
          <Section key={group} title={records.groups[group]}>
            {shown.map((field) => (
              <FieldBox key={field.key} field={field} draft={draft} need={needs.get(field.key)} onValue={(text) => put(field.key, text)} />
            ))}
          </Section>
        );
      })}
    </>
  );
}

interface BoxProps {
  field: Field;
  draft: RecordDraft;
  need: { need: Need; by: string[]; notes: string[] } | undefined;
  onValue: (text: string) => void;
}

function FieldBox({ field, draft, need, onValue }: BoxProps): JSX.Element {
  const { records, common } = useWords();
  const value = draft.values[field.key] ?? "";
  const blank = value.trim() === "";
  const source = blank ? undefined : sourceWords(draft.from[field.key]);
  const asks = need && need.need !== "advised" ? say(records.askedBy, need.by.join(", ")) : need ? records.advisedField : undefined;
  const hint = [asks, need?.notes.join("; ")].filter(Boolean).join(" · ");
  const shared = { label: labelOf(field.key), hint: hint === "" ? undefined : hint, onValue };
  return (
    <div class={blank && need?.need === "missing" ? "record-field lacks" : "record-field"}>
      {field.box === "yes_no" ? (
        <Choice {...shared} value={yesNo(value)} options={[{ value: "yes", label: common.yes }, { value: "no", label: common.no }]} onValue={(answer: "yes" | "no") => onValue(answer === "yes" ? common.yes : common.no)} />
      ) : (
        <TextField {...shared} value={value} long={field.box === "long"} type={field.box === "date" || field.box === "time" ? field.box : "text"} />
      )}
      {blank ? <p class="record-source">{need?.need === "missing" ? records.notEnteredRequired : common.notEntered}</p> : source && <p class="record-source">{source}</p>}
    </div>
  );
}

const yesNo = (text: string) => {
  const answer = saysYes(text);
  return answer === undefined ? undefined : answer ? "yes" : "no";
};
