// What each authority still lacks, until when, and how long the record is kept: as the core judges it now.
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { AuthorityCheck, RecordField } from "@/core/operations.gen";
import { settings } from "@/app/settings";
import { WorkingButton } from "@/parts/answer";
import { Findings, RefusalNote, Sign } from "@/parts/findings";
import { count, say, showDate, useWords } from "@/words/words";

export function ChecksPart({ asked }: { asked: Asked<"record-check"> | undefined }): JSX.Element {
  const { records } = useWords();
  if (asked === undefined) return <p class="empty">{records.sayAuthority}</p>;
  if (asked.refusal) return <RefusalNote of={asked.refusal} />;
  const { answer } = asked;
  const first = answer?.first_deadline;
  const keep = answer?.keep_until;
  return (
    <div class="checks" aria-live="polite">
      <p class="checks-sum">
        <strong>{answer?.nothing_missing ? records.nothingMissing : records.somethingMissing}</strong>
        {first && ` ${say(records.firstDeadline, showDeadline(first))}`}
        {keep && ` ${say(records.keepUntil, showDate(keep))}`}
      </p>
      {(answer?.checks ?? []).map((check) => (
        <Judgement key={check.authority} check={check} />
      ))}
      <Findings of={asked.findings.filter(({ code }) => code !== "rule_rescinded" || answer?.checks?.some(({ standing }) => standing === "rescinded"))} />
      <WorkingButton of={asked} title={records.whatIsMissing} />
    </div>
  );
}

/** A day, with the time when the rule counts in hours. */
export function showDeadline(deadline: string): string {
  const time = /[ T](\d\d:\d\d)/.exec(deadline)?.[1];
  return time === undefined ? showDate(deadline) : `${showDate(deadline)}, ${time}`;
}

const labelOf = (field: RecordField) => (settings.now().language === "es" && field.label_es ? field.label_es : (field.label ?? field.key ?? ""));

function Judgement({ check }: { check: AuthorityCheck }): JSX.Element {
  const { records } = useWords();
  const counts = check.standing === "in_force" || check.standing === "unsettled";
  const missing = check.missing ?? [];
  const bad = check.timeliness === "late" || check.timeliness === "overdue";
  const state = !counts ? "rests" : missing.length > 0 || bad ? "lacks" : "holds";
  return (
    <section class={`judgement ${state}`}>
      <h3>
        {state === "lacks" && <Sign severity={bad ? "stop" : "warning"} />}
        {check.authority}
      </h3>
      <p class="judgement-state">
        {counts ? (missing.length === 0 ? records.allEntered : `${count(missing.length, records.lacks)}.`) : records.standing[check.standing ?? "does_not_apply"]}
        {counts && check.standing === "unsettled" && ` ${records.standing.unsettled}`}
      </p>
      {check.why && <p class="hint">{check.why}</p>}
      {counts && (
        <>
          <FieldNames title={records.missing} fields={missing} />
          <FieldNames title={records.toDecide} fields={check.to_decide ?? []} />
          <FieldNames title={records.advised} fields={check.advised ?? []} folded />
          <p class={bad ? "judgement-due bad" : "judgement-due"}>
            {check.deadline ? say(records.deadline, showDeadline(check.deadline)) : records.noDeadline} {check.deadline && records.timeliness[check.timeliness ?? "no_deadline"]}
            <br />
            {check.keep_until ? say(records.keepUntil, showDate(check.keep_until)) : records.keepUnknown}
          </p>
          {(check.to_verify ?? []).map((doubt) => (
            <p key={doubt} class="hint">
              {records.verify} {doubt}
            </p>
          ))}
        </>
      )}
      <details class="judgement-more">
        <summary>{records.aboutRule}</summary>
        <p>{check.citation}</p>
        {check.note && <p>{check.note}</p>}
        {counts && <p>{say(records.held, (check.present ?? []).map(labelOf).join("; ") || records.none)}</p>}
      </details>
    </section>
  );
}

function FieldNames({ title, fields, folded }: { title: string; fields: RecordField[]; folded?: boolean }): JSX.Element | null {
  if (fields.length === 0) return null;
  const list = (
    <ul class="field-names">
      {fields.map((field) => (
        <li key={field.key}>
          {labelOf(field)}
          {field.note && <small>{field.note}</small>}
        </li>
      ))}
    </ul>
  );
  if (folded) {
    return (
      <details class="judgement-more">
        <summary>
          {title} ({fields.length})
        </summary>
        {list}
      </details>
    );
  }
  return (
    <>
      <h4>{title}</h4>
      {list}
    </>
  );
}
