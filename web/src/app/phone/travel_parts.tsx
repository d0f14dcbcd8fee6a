// A copy of everything as one file: out by download or the share sheet, in by the file picker.
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { makeBundle } from "@/notebook/bundle";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { takeIn } from "./take_in";

const canShare = typeof navigator.canShare === "function" && navigator.canShare({ files: [new File([""], "a.zip", { type: "application/zip" })] });

function download(file: File): void {
  const place = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = place;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(place), 60_000);
}

export function TakePart(): JSX.Element {
  const { sync } = useWords();
  const [made, setMade] = useState<string>();
  const give = async (way: (file: File) => void | Promise<void>) => {
    const file = await makeBundle();
    await way(file);
    setMade(file.name);
  };
  // The person may close the share sheet again: that is no fault.
  const share = (file: File) => navigator.share({ files: [file], title: file.name }).catch(() => undefined);
  return (
    <Section title={sync.takeTitle}>
      <p>{sync.takeIntro}</p>
      <div class="row">
        <button type="button" class="button main" onClick={() => void give(download)}>
          {sync.takeSave}
        </button>
        {canShare && (
          <button type="button" class="button" onClick={() => void give(share)}>
            {sync.takeShare}
          </button>
        )}
      </div>
      <p role="status">{made && say(sync.takeMade, made)}</p>
    </Section>
  );
}

export function BringPart(): JSX.Element {
  const { sync } = useWords();
  const id = useId();
  const [said, setSaid] = useState<string[]>([]);
  const take = async (input: HTMLInputElement) => {
    const lines: string[] = [];
    for (const file of input.files ?? []) lines.push(...(await takeIn(file)));
    input.value = "";
    setSaid(lines);
  };
  return (
    <Section title={sync.bringTitle}>
      <p>{sync.bringIntro}</p>
      <label class="button wide file" for={id}>
        {sync.bringPick}
        <input id={id} type="file" multiple accept=".zip,.txt,application/zip,text/plain" onChange={(event) => void take(event.currentTarget)} />
      </label>
      <div role="status">
        {said.map((line, index) => (
          <p key={index}>{line}</p>
        ))}
      </div>
    </Section>
  );
}
