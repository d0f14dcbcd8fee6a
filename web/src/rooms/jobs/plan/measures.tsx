// The jugs, cups and scales at hand with their marks, so that amounts come out as "2 full and to 30 fl oz".
import type { JSX } from "preact";
import type { Asked } from "@/core/core";
import type { MeasuringTool } from "@/core/operations.gen";
import { AmountField, type UnitChoice } from "@/parts/amount_field";
import { Choice, TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { errorAt } from "../job_data";

const volumes: UnitChoice = { us: ["fl oz", "mL", "pt", "qt", "gal"], metric: ["mL", "L", "fl oz"] };
const weights: UnitChoice = { us: ["oz wt", "lb", "g"], metric: ["g", "kg", "oz wt"] };

interface Props {
  measures: MeasuringTool[];
  onMeasures: (measures: MeasuringTool[]) => void;
  asked: Asked | undefined;
}

export function MeasuresForm({ measures, onMeasures, asked }: Props): JSX.Element {
  const { common, jobs } = useWords();
  const change = (at: number, part: Partial<MeasuringTool>) => onMeasures(measures.map((one, index) => (index === at ? { ...one, ...part } : one)));
  return (
    <Section title={jobs.measures.title}>
      <p class="hint">{jobs.measures.hint}</p>
      {measures.map((tool, index) => (
        <fieldset key={index} class="product">
          <legend>{say(jobs.measures.number, index + 1)}</legend>
          <Measure tool={tool} asked={asked} field={`tools[${index}]`} onChange={(part) => change(index, part)} />
          <button type="button" class="button quiet" onClick={() => onMeasures(measures.filter((_, other) => other !== index))}>
            {common.remove} {tool.name}
          </button>
        </fieldset>
      ))}
      <button type="button" class="button wide" onClick={() => onMeasures([...measures, { name: "" }])}>
        {jobs.measures.add}
      </button>
    </Section>
  );
}

interface MeasureProps {
  tool: MeasuringTool;
  asked: Asked | undefined;
  field: string;
  onChange: (part: Partial<MeasuringTool>) => void;
}

type Sort = "volume" | "marks" | "scale";

function Measure({ tool, asked, field, onChange }: MeasureProps): JSX.Element {
  const { jobs } = useWords();
  const sort: Sort = tool.weight_step !== undefined ? "scale" : tool.marks !== undefined ? "marks" : "volume";
  const choose = (next: Sort) =>
    onChange({
      step: next === "volume" ? "" : undefined,
      holds: next === "volume" ? "" : undefined,
      marks: next === "marks" ? [] : undefined,
      weight_step: next === "scale" ? "" : undefined,
      weight_holds: next === "scale" ? "" : undefined,
    });
  const at = (name: "step" | "holds" | "weight_step" | "weight_holds") => ({
    value: tool[name] as string | undefined,
    error: errorAt(asked, `${field}.${name}`, tool[name]),
    onValue: (text: string) => onChange({ [name]: text }),
  });
  return (
    <>
      <TextField label={jobs.measures.name} hint={jobs.measures.nameHint} value={tool.name} onValue={(name) => onChange({ name })} />
      <Choice label={jobs.measures.sort} value={sort} options={(["volume", "marks", "scale"] as const).map((value) => ({ value, label: jobs.measures.sorts[value] }))} onValue={choose} />
      {sort === "volume" && (
        <div class="two">
          <AmountField label={jobs.measures.step} units={volumes} {...at("step")} />
          <AmountField label={jobs.measures.holds} units={volumes} {...at("holds")} />
        </div>
      )}
      {sort === "scale" && (
        <div class="two">
          <AmountField label={jobs.measures.weightStep} units={weights} {...at("weight_step")} />
          <AmountField label={jobs.measures.weightHolds} units={weights} {...at("weight_holds")} />
        </div>
      )}
      {sort === "marks" && <Marks tool={tool} error={asked?.refusal?.field?.startsWith(`${field}.marks`) ? asked.refusal.detail : undefined} onChange={onChange} />}
    </>
  );
}

// "10 mL, 12.5 mL, 15 mL": as many as the cup has, with a comma between, as typed.
function Marks({ tool, error, onChange }: Pick<MeasureProps, "tool" | "onChange"> & { error: string | undefined }): JSX.Element {
  const { jobs } = useWords();
  const text = (tool.marks ?? []).map((mark) => (typeof mark === "string" ? mark : "")).join(";");
  return <TextField label={jobs.measures.marks} hint={jobs.measures.marksHint} value={text} error={error} onValue={(typed) => onChange({ marks: typed === "" ? [] : typed.split(";") })} />;
}
