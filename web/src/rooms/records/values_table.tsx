// Every value of a record under its group; a corrected one shows what was closed and what holds now.
import type { JSX } from "preact";
import { useWords } from "@/words/words";
import { valuesNow } from "./amendments";
import { sourceWords } from "./source_words";
import type { RecordThing } from "./standing";
import { fieldOf, fields, groups, labelOf } from "./tables";

export function ValuesTable({ record, missing }: { record: RecordThing; missing: string[] }): JSX.Element {
  const { records, common } = useWords();
  const closed = record.fields.values ?? {};
  const now = valuesNow(record);
  const strange = Object.keys(now).filter((key) => fieldOf(key) === undefined);
  const keys = [...fields.map(({ key }) => key), ...strange].filter((key) => (now[key] ?? "") !== "" || missing.includes(key));
  const groupOf = (key: string) => fieldOf(key)?.group ?? "after";
  return (
    <div class="record-values">
      {groups.map((group) => {
        const shown = keys.filter((key) => groupOf(key) === group);
        if (shown.length === 0) return null;
        return (
          <section key={group}>
            <h3>{records.groups[group]}</h3>
            <dl class="values">
              {shown.map((key) => (
                <div key={key}>
                  <dt>{labelOf(key)}</dt>
                  <dd class={now[key] ? undefined : "not-entered"}>
                    {now[key] !== closed[key] && closed[key] && <del>{closed[key]}</del>} {now[key] ? <span class="value-text">{now[key]}</span> : common.notEntered}
                    {now[key] && now[key] === closed[key] && <small>{sourceWords(record.fields.value_from?.[key])}</small>}
                    {now[key] !== closed[key] && <small>{records.amendedField}</small>}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        );
      })}
    </div>
  );
}
