// A sprayer as it is known: name and sort are enough; the rest may come later.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { ask, type Refusal } from "@/core/core";
import type { SprayerKind } from "@/core/operations.gen";
import { useForm } from "@/notebook/forms";
import { newId } from "@/notebook/notebook";
import type { Sprayer, Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { ClearForm } from "@/parts/clear_form";
import { Choice, Pick, TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, useWords } from "@/words/words";
import { flowProblem, pressureProblem, volumeProblem } from "./checks";
import { usualDays } from "./due";
import { sortOptions } from "./sorts";

type Fields = Partial<Omit<Sprayer, "tips">> & { tips?: string };

export function EditPage({ sprayer }: { sprayer?: Thing<"sprayer"> }): JSX.Element {
  const { sprayers, common } = useWords();
  const words = sprayers.form;
  const stored = sprayer?.fields;
  const form = useForm<Fields>(`sprayer/${sprayer?.id ?? "new"}`, { ...stored, tips: stored?.tips === undefined ? "" : String(stored.tips) });
  const saving = useSaving();
  const { value: fields } = form;
  const refusal = checked(fields);
  const problem = (field: keyof Fields) => (refusal?.field === field && fields[field] ? refusal.detail : undefined);
  const back = sprayer ? address("sprayers", sprayer.id) : address("sprayers");
  const named = (fields.name ?? "").trim() !== "" && fields.sort !== undefined;

  const save = async () => {
    const subject = sprayer?.id ?? newId();
    if (!(await saving.save([{ kind: "sprayer", subject, body: bodyOf(fields) }]))) return;
    form.clear();
    goInstead("sprayers", subject);
  };
  return (
    <main>
      <PageHead title={sprayer ? say(words.changeTitle, stored?.name ?? "") : words.newTitle} back={back} />
      {form.resumed && <p class="resumed">{common.resumed}</p>}
      <TextField label={common.name} hint={words.nameHint} value={fields.name} onValue={(name) => form.set({ name })} />
      <div class="full-choices">
        <Choice label={words.sort} value={fields.sort} options={sortOptions(sprayers)} onValue={(sort) => form.set({ sort })} />
      </div>
      {fields.sort !== undefined && (
        <>
          <WidthPart sort={fields.sort} fields={fields} set={form.set} problem={problem} />
          <TipPart fields={fields} set={form.set} problem={problem} />
          <RestPart fields={fields} set={form.set} problem={problem} />
        </>
      )}
      {!named && <p class="hint">{words.needName}</p>}
      <SaveBar saving={saving} disabled={!named || refusal !== undefined || hasWrong(fields)} onSave={() => void save()} />
      {form.resumed && <ClearForm onClear={form.clear} />}
    </main>
  );
}

interface PartProps {
  fields: Fields;
  set: (change: Partial<Fields>) => void;
  problem: (field: keyof Fields) => string | undefined;
}

function WidthPart({ sort, fields, set, problem }: PartProps & { sort: SprayerKind }): JSX.Element {
  const words = useWords().sprayers.form;
  const banded = sort === "band";
  const hint = sort === "boom" ? words.widthHintBoom : sort === "boomless" ? words.widthHintBoomless : words.widthHintHand;
  return (
    <Section title={words.widthPart}>
      {banded ? (
        <div class="two">
          <AmountField label={words.band} value={fields.band_width} units={unitsOf.spacing} error={problem("band_width")} onValue={(band_width) => set({ band_width })} required={false} />
          <AmountField label={words.rows} value={fields.row_spacing} units={unitsOf.spacing} error={problem("row_spacing")} onValue={(row_spacing) => set({ row_spacing })} required={false} />
        </div>
      ) : (
        <AmountField label={words.width} hint={hint} value={fields.width} units={unitsOf.length} error={problem("width")} onValue={(width) => set({ width })} required={false} />
      )}
      {sort === "boomless" && (
        <AmountField label={words.wetted} value={fields.wetted_width} units={unitsOf.length} error={problem("wetted_width")} onValue={(wetted_width) => set({ wetted_width })} required={false} />
      )}
      {sort === "boom" && (
        <AmountField label={words.spacing} value={fields.spacing} units={unitsOf.spacing} error={problem("spacing")} onValue={(spacing) => set({ spacing })} required={false} />
      )}
    </Section>
  );
}

function TipPart({ fields, set, problem }: PartProps): JSX.Element {
  const words = useWords().sprayers;
  const countProblem = problem("tips") ?? (isCount(fields.tips) ? undefined : words.units.wholeNumber);
  return (
    <Section title={words.form.tipPart}>
      <div class="two">
        <TextField label={fields.sort === "band" ? words.form.tipsBand : words.form.tips} whole value={fields.tips} error={countProblem} onValue={(tips) => set({ tips })} required={false} />
        <TextField label={words.form.size} hint={words.form.sizeHint} value={fields.tip_size} onValue={(tip_size) => set({ tip_size })} required={false} />
      </div>
      <TextField label={words.form.tipWords} value={fields.tip_words} onValue={(tip_words) => set({ tip_words })} required={false} />
      <div class="two">
        <AmountField label={words.form.rated} hint={words.form.ratedHint} value={fields.tip_rated_flow} units={unitsOf.flow} error={flowProblem(fields.tip_rated_flow)} onValue={(tip_rated_flow) => set({ tip_rated_flow })} required={false} />
        <AmountField label={words.form.ratedAt} value={fields.tip_rated_pressure} units={unitsOf.pressure} error={pressureProblem(fields.tip_rated_pressure)} onValue={(tip_rated_pressure) => set({ tip_rated_pressure })} required={false} />
      </div>
      <TextField label={words.form.since} type="date" value={fields.tips_since} onValue={(tips_since) => set({ tips_since })} required={false} />
    </Section>
  );
}

function RestPart({ fields, set, problem }: PartProps): JSX.Element {
  const words = useWords().sprayers.form;
  const days = Object.entries(words.everyDays).map(([key, label]) => ({ value: key.slice(1), label }));
  return (
    <Section title={words.restPart}>
      <div class="two">
        <AmountField label={words.pressure} value={fields.pressure} units={unitsOf.pressure} error={pressureProblem(fields.pressure)} onValue={(pressure) => set({ pressure })} required={false} />
        <AmountField label={words.tank} value={fields.tank} units={unitsOf.tank} error={problem("tank")} onValue={(tank) => set({ tank })} required={false} />
      </div>
      <AmountField label={words.trapped} hint={words.trappedHint} value={fields.trapped} units={unitsOf.tank} error={volumeProblem(fields.trapped)} onValue={(trapped) => set({ trapped })} required={false} />
      <Pick
        label={words.again}
        hint={words.againHint}
        value={String(fields.calibrate_after_days ?? usualDays)}
        options={days}
        onValue={(chosen) => set({ calibrate_after_days: Number(chosen) })}
      />
      <TextField label={words.notes} long value={fields.notes} onValue={(notes) => set({ notes })} required={false} />
    </Section>
  );
}

const hasWrong = ({ pressure, trapped, tip_rated_flow: flow, tip_rated_pressure: at }: Fields): boolean =>
  [pressureProblem(pressure), volumeProblem(trapped), flowProblem(flow), pressureProblem(at)].some((problem) => problem !== undefined);

const isCount = (text: string | undefined) => text === undefined || text.trim() === "" || /^[1-9]\d*$/.test(text.trim());

/** What the core has against the amounts typed so far: the rest of a calibration is filled in to ask it. */
function checked(fields: Fields): Refusal | undefined {
  const { sort, width, wetted_width, spacing, band_width, row_spacing, tank } = fields;
  const stand = { course_length: "100 ft", course_times: ["30 s"], flow: "1 gal/min", catch_covers: "all_tips" as const };
  const { refusal } = ask("calibrate", {
    sprayer: sort,
    ...(sort === "band" ? { band_width: band_width || "14 in", row_spacing } : { width: width || (wetted_width ? undefined : "10 ft"), wetted_width, spacing: width ? undefined : spacing }),
    tips: isCount(fields.tips) && fields.tips ? Number(fields.tips) : undefined,
    tank_volume: tank,
    ...stand,
  });
  if (refusal?.field === "tank_volume") return { ...refusal, field: "tank" };
  const entered = refusal?.field !== undefined && fields[refusal.field as keyof Fields];
  return entered ? refusal : undefined;
}

/** The body to write: a field that was emptied is cleared, not left as it was. */
function bodyOf(fields: Fields) {
  const kept = Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, value === "" ? null : value]));
  const tips = isCount(fields.tips) && fields.tips ? Number(fields.tips) : null;
  return { ...kept, name: (fields.name ?? "").trim(), tips } as Partial<Sprayer>;
}
