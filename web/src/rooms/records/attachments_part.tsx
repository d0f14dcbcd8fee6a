// Photos, maps, bulletins of a record, kept in the notebook under their digests.
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { blob, keepBlob, newId, useThings, WriteError } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { Section } from "@/parts/list";
import { useSaving } from "@/parts/save_bar";
import { giveFile } from "@/paper/give_file";
import { instant, say, showDate, useWords } from "@/words/words";

export function AttachmentsPart({ id }: { id: string }): JSX.Element {
  const { records, common } = useWords();
  const box = useId();
  const saving = useSaving();
  const [trouble, setTrouble] = useState("");
  const attached = useThings("attachment").filter(({ fields }) => fields.of === id);
  const add = async (input: HTMLInputElement) => {
    setTrouble("");
    for (const file of input.files ?? []) {
      try {
        const digest = await keepBlob(await file.arrayBuffer(), file.type || "application/octet-stream");
        await saving.save([{ kind: "attachment", subject: newId(), body: { name: file.name, blob: digest, type: file.type || "application/octet-stream", of: id, of_kind: "record", taken: instant(new Date(file.lastModified)) } }]);
      } catch (error) {
        setTrouble(error instanceof WriteError && error.reason === "full" ? common.full : say(common.writeFailed, error instanceof Error ? error.message : String(error)));
      }
    }
    input.value = "";
  };
  return (
    <Section title={records.attachments}>
      {attached.length === 0 && <p class="hint">{records.noAttachments}</p>}
      <ul class="things">
        {attached.map((each) => (
          <Attached key={each.id} of={each} />
        ))}
      </ul>
      {saving.trouble}
      {trouble && <p class="refusal">{trouble}</p>}
      <label class="button wide file" for={box}>
        {records.attach}
        <input id={box} type="file" multiple onChange={(event) => void add(event.currentTarget)} />
      </label>
    </Section>
  );
}

function Attached({ of: { fields } }: { of: Thing<"attachment"> }): JSX.Element {
  const { records } = useWords();
  const [gone, setGone] = useState(false);
  const open = async () => {
    const kept = await blob(fields.blob);
    if (kept === undefined) return setGone(true);
    giveFile(new File([kept.bytes], fields.name, { type: kept.type }));
  };
  return (
    <li>
      <button type="button" class="thing attached" onClick={() => void open()}>
        <span class="thing-text">
          <strong>{fields.name}</strong>
          <span class="thing-note">
            {fields.type}
            {fields.taken && `, ${showDate(fields.taken)}`}
          </span>
          {gone && <span class="error">{records.notHere}</span>}
        </span>
        <span class="thing-end">{records.saveFile}</span>
      </button>
    </li>
  );
}
