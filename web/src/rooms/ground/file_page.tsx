// A stand, or several, from a map file. Nothing is written before the person has seen the outlines.
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import type { Asked } from "@/core/core";
import { show } from "@/core/quantity";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Tick } from "@/parts/fields";
import { Outline } from "@/parts/outline";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { count, say, useWords } from "@/words/words";
import { AreaFigures } from "./area_figures";
import { readMapFile } from "./files/read_map_file";
import { MapFileError, swapped, type Shape } from "./files/shapes";
import { askArea, farWarning, looksSwapped, standDraft, type StandWords } from "./ground_of";
import { StandWordFields } from "./stand_words";

interface Taken {
  shapes: Shape[];
  leftOut: number;
  chosen: boolean[];
}

export function FilePage(): JSX.Element {
  const { ground } = useWords();
  const id = useId();
  const [taken, setTaken] = useState<Taken>();
  const [fault, setFault] = useState<string>();
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    setTaken(undefined);
    setFault(undefined);
    try {
      const { shapes, leftOut } = await readMapFile(file);
      setTaken({ shapes, leftOut, chosen: shapes.map(() => shapes.length === 1) });
    } catch (error) {
      setFault(error instanceof MapFileError ? say(ground.faults[error.fault], error.what) : ground.faults.damaged);
    }
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    void take(event.dataTransfer?.files[0]);
  };
  return (
    <main onDragOver={(event) => event.preventDefault()} onDrop={drop}>
      <PageHead title={ground.fromFile} back={address("ground")} />
      <label class={taken ? "button wide file" : "button main wide file"} for={id}>
        {ground.pick}
        <input id={id} type="file" accept=".geojson,.json,.kml,.kmz,.gpx,application/geo+json,application/json" onChange={(event) => void take(event.currentTarget.files?.[0])} />
      </label>
      <p class="hint">{ground.pickHint}</p>
      {fault && (
        <p class="refusal" role="alert">
          {fault}
        </p>
      )}
      {taken && <Choose taken={taken} onTaken={setTaken} />}
    </main>
  );
}

function Choose({ taken, onTaken }: { taken: Taken; onTaken: (taken: Taken) => void }): JSX.Element {
  const { ground } = useWords();
  const { shapes, chosen } = taken;
  const [error, setError] = useState("");
  const [offset, setOffset] = useState("");
  const picked = shapes.flatMap((shape, index) => (chosen[index] ? [{ shape, index }] : []));
  const tick = (index: number, on: boolean) => onTaken({ ...taken, chosen: chosen.map((was, at) => (at === index ? on : was)) });
  return (
    <>
      {taken.leftOut > 0 && <p class="hint">{count(taken.leftOut, ground.leftOut)}</p>}
      {shapes.length > 1 && (
        <fieldset class="field">
          <legend>{ground.which}</legend>
          <p class="hint">{ground.whichHint}</p>
          {shapes.map((shape, index) => (
            <Tick key={index} label={nameOf(shape, index, ground.unnamed)} hint={show(askArea(shape.boundary).answer?.area)} checked={chosen[index] === true} onValue={(on) => tick(index, on)} />
          ))}
        </fieldset>
      )}
      {picked.length > 0 && (
        <>
          <AmountField label={ground.positionError} hint={ground.positionErrorHint} required={false} value={error} units={unitsOf.length} onValue={setError} />
          <AmountField label={ground.edgeOffset} hint={ground.edgeOffsetHint} required={false} value={offset} units={unitsOf.length} onValue={setOffset} />
        </>
      )}
      {picked.map(({ shape, index }) => (
        <Look
          key={index}
          shape={shape}
          name={nameOf(shape, index, ground.unnamed)}
          asked={askArea(shape.boundary, error, offset)}
          onTurn={() => onTaken({ ...taken, shapes: shapes.map(swapped) })}
        />
      ))}
      {picked.length > 0 && <Save picked={picked} error={error} offset={offset} />}
    </>
  );
}

const nameOf = (shape: Shape, index: number, unnamed: string): string => shape.name || say(unnamed, index + 1);

function Look({ shape, name, asked, onTurn }: { shape: Shape; name: string; asked: Asked<"area">; onTurn: () => void }): JSX.Element {
  const { ground } = useWords();
  const far = farWarning(shape.boundary);
  return (
    <section class="section">
      <h2>{name}</h2>
      {asked.answer && <Outline label={name} ground={shape.boundary} />}
      {shape.closed_by_hand && <p class="refusal">{ground.closedByHand}</p>}
      {shape.pieces && <p class="refusal">{say(ground.pieces, shape.pieces)}</p>}
      {far && <p class="refusal">{far}</p>}
      <AreaFigures of={asked} />
      {looksSwapped(shape, asked) && (
        <p class="row">
          {ground.looksSwapped}
          <button type="button" class="button" onClick={onTurn}>
            {ground.swap}
          </button>
        </p>
      )}
    </section>
  );
}

interface SaveProps {
  picked: Array<{ shape: Shape; index: number }>;
  error: string;
  offset: string;
}

function Save({ picked, error, offset }: SaveProps): JSX.Element {
  const { ground } = useWords();
  const saving = useSaving();
  const only = picked.length === 1 ? picked[0] : undefined;
  const [words, setWords] = useState<Partial<StandWords>>({});
  const all = picked.map(({ shape, index }) => ({ shape, index, asked: askArea(shape.boundary, error, offset) }));
  const onlyWords: StandWords = { ...words, name: words.name ?? only?.shape.name ?? "" };
  const ready = all.every(({ asked }) => asked.answer !== undefined) && (only === undefined || onlyWords.name.trim() !== "");
  const save = async () => {
    const drafts = all.map(({ shape, index, asked }) => standDraft(only ? onlyWords : { name: nameOf(shape, index, ground.unnamed) }, "file", shape.boundary, asked, error));
    if (!(await saving.save(drafts))) return;
    if (only && drafts[0]) goInstead("ground", drafts[0].subject);
    else goInstead("ground");
  };
  return (
    <>
      {only && <StandWordFields value={onlyWords} nameError={onlyWords.name.trim() === "" ? ground.needName : undefined} onValue={(part) => setWords({ ...words, ...part })} />}
      <SaveBar saving={saving} onSave={() => void save()} disabled={!ready} label={only ? ground.save : count(picked.length, ground.saveMany)} />
    </>
  );
}
