import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import type { Asked } from "@/core/core";
import { useForm } from "@/notebook/forms";
import { things, useThing } from "@/notebook/notebook";
import type { Stand, Thing } from "@/notebook/things";
import { Outline } from "@/parts/outline";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { useWords } from "@/words/words";
import { AreaFigures } from "./area_figures";
import { askArea, type StandWords } from "./ground_of";
import type { Shape } from "./files/shapes";
import { StandWordFields } from "./stand_words";

export function StandPage({ id, editing }: { id: string; editing: boolean }): JSX.Element {
  const { ground, common } = useWords();
  const stand = useThing("stand", id);
  if (stand === undefined) {
    return (
      <main>
        <PageHead title={ground.title} back={address("ground")} />
        <p>{common.notFound}</p>
      </main>
    );
  }
  return editing ? <EditWords stand={stand} /> : <ShowStand stand={stand} />;
}

// Drawn anew in the units of the person, from the outline and the errors it was saved with.
function askAgain(stand: Stand): Asked<"area"> | undefined {
  if (stand.boundary === undefined) return undefined;
  const offset = stand.request?.edge_offset;
  return askArea(stand.boundary as Shape["boundary"], stand.position_error, typeof offset === "string" ? offset : "");
}

function ShowStand({ stand: { id, fields } }: { stand: Thing<"stand"> }): JSX.Element {
  const { ground } = useWords();
  const asked = askAgain(fields);
  const owner = things("landowner").find((found) => found.id === fields.landowner)?.fields.name;
  return (
    <main>
      <PageHead title={fields.name} back={address("ground")} />
      <p class="hint">{[owner, fields.place, ground.how[fields.how]].filter(Boolean).join(" · ")}</p>
      <Outline label={fields.name} ground={fields.boundary} />
      {asked ? <AreaFigures of={asked} /> : <TypedArea of={fields} />}
      {fields.notes && <p class="notes-text">{fields.notes}</p>}
      <div class="row">
        <a class="button" href={address("ground", id, "edit")}>
          {ground.edit}
        </a>
        {fields.boundary && (
          <button type="button" class="button" onClick={() => exportStand(fields, owner)}>
            {ground.export}
          </button>
        )}
      </div>
    </main>
  );
}

function TypedArea({ of }: { of: Stand }): JSX.Element {
  const { ground } = useWords();
  return (
    <p class="typed-area">
      <strong>{of.typed_area}</strong> {ground.noBoundary}
    </p>
  );
}

function exportStand(stand: Stand, landowner: string | undefined): void {
  const { name, place, notes, how, position_error, on } = stand;
  const properties = { name, landowner, place, notes, how, position_error, area: stand.answer?.area, on };
  const text = JSON.stringify({ type: "FeatureCollection", features: [{ type: "Feature", properties, geometry: stand.boundary }] }, null, 1);
  const fileAddress = URL.createObjectURL(new Blob([text], { type: "application/geo+json" }));
  const link = document.createElement("a");
  link.href = fileAddress;
  link.download = `${name.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "stand"}.geojson`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(fileAddress), 60_000);
}

function EditWords({ stand }: { stand: Thing<"stand"> }): JSX.Element {
  const { ground } = useWords();
  const { name, landowner, place, notes } = stand.fields;
  const form = useForm<StandWords>(`stand/${stand.id}`, { name, landowner, place, notes });
  const saving = useSaving();
  const save = async () => {
    const { name: newName, landowner: owner, place: where, notes: said } = form.value;
    const body = { name: newName, landowner: owner || null, place: where || null, notes: said || null };
    if (!(await saving.save([{ kind: "stand", subject: stand.id, body }]))) return;
    form.clear();
    goInstead("ground", stand.id);
  };
  return (
    <main>
      <PageHead title={name} back={address("ground", stand.id)} />
      <StandWordFields value={form.value} nameError={form.value.name.trim() === "" ? ground.needName : undefined} onValue={(part) => form.set(part)} />
      <SaveBar saving={saving} onSave={() => void save()} disabled={form.value.name.trim() === ""} label={ground.save} />
    </main>
  );
}
