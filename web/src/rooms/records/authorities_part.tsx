// Whose rules the record is judged by, and what decides whether they count.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { Choice, TextField, Tick } from "@/parts/fields";
import { Section } from "@/parts/list";
import { useWords } from "@/words/words";
import type { RecordDraft } from "./record_draft";
import type { YesNo } from "./standing";
import { authoritiesOn } from "./tables";

interface Props {
  draft: RecordDraft;
  onChange: (change: Partial<RecordDraft>) => void;
}

export function AuthoritiesPart({ draft, onChange }: Props): JSX.Element {
  const { records, common } = useWords();
  const [choosing, setChoosing] = useState(draft.authorities.length === 0);
  const offered = authoritiesOn(draft.values["date"]);
  const toggle = (key: string, on: boolean) => onChange({ authorities: on ? [...draft.authorities, key] : draft.authorities.filter((each) => each !== key) });
  const shown = choosing ? offered : offered.filter(({ key }) => draft.authorities.includes(key));
  const ended = draft.authorities.filter((key) => !offered.some((each) => each.key === key));
  return (
    <Section title={records.authorities}>
      <p class="hint">{records.authoritiesHint}</p>
      <div class="authority-list">
        {shown.map(({ key, citation }) => (
          <Tick key={key} label={key} hint={citation} checked={draft.authorities.includes(key)} onValue={(on) => toggle(key, on)} />
        ))}
        {ended.map((key) => (
          <Tick key={key} label={key} hint={records.ruleEnded} checked onValue={(on) => toggle(key, on)} />
        ))}
      </div>
      <button type="button" class="button wide" aria-expanded={choosing} onClick={() => setChoosing(!choosing)}>
        {choosing ? common.done : records.moreAuthorities}
      </button>
      <div class="two">
        <Question label={records.wps} hint={records.wpsHint} value={draft.worker_protection} onValue={(worker_protection) => onChange({ worker_protection })} />
        <Question label={records.commodity} hint={records.commodityHint} value={draft.commodity} onValue={(commodity) => onChange({ commodity })} />
        <TextField label={records.endDate} hint={records.endDateHint} required={false} type="date" value={draft.end_date} onValue={(end_date) => onChange({ end_date: end_date || undefined })} />
      </div>
    </Section>
  );
}

interface QuestionProps {
  label: string;
  hint: string;
  value: YesNo | undefined;
  onValue: (value: YesNo) => void;
}

function Question({ label, hint, value, onValue }: QuestionProps): JSX.Element {
  const { common } = useWords();
  const options = [
    { value: "yes" as const, label: common.yes },
    { value: "no" as const, label: common.no },
  ];
  return <Choice label={label} hint={hint} value={value} options={options} onValue={onValue} />;
}
