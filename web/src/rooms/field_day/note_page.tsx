// A note or a photo. Both are kept as attachments of the job; the photo's bytes as the camera made them.
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useForm } from "@/notebook/forms";
import { keepBlob, newId, WriteError } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { TextField } from "@/parts/fields";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { instant, say, useWords } from "@/words/words";

export function NotePage({ job }: { job: Thing<"job"> }): JSX.Element {
  const { fieldDay, common } = useWords();
  const id = useId();
  const form = useForm<{ words: string }>(`note/${job.id}`, { words: "" });
  const saving = useSaving();
  const [problem, setProblem] = useState<string>();
  const { words } = form.value;

  const keep = async (bytes: ArrayBuffer, type: string, name: string) => {
    setProblem(undefined);
    try {
      const digest = await keepBlob(bytes, type);
      const body = { name, blob: digest, type, of: job.id, of_kind: "job" as const, taken: instant(), notes: words.trim() || undefined };
      if (!(await saving.save([{ kind: "attachment", subject: newId(), body }]))) return;
      form.clear();
      goInstead("field-day", job.id);
    } catch (error) {
      const isFull = error instanceof WriteError && error.reason === "full";
      setProblem(isFull ? common.full : say(common.writeFailed, error instanceof Error ? error.message : String(error)));
    }
  };
  const photo = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file !== undefined) await keep(await file.arrayBuffer(), file.type || "image/jpeg", file.name || fieldDay.event.photo);
    input.value = "";
  };
  const note = () => keep(new TextEncoder().encode(words.trim()).buffer, "text/plain", words.trim().split("\n")[0]?.slice(0, 60) ?? fieldDay.event.note);
  return (
    <main>
      <PageHead title={fieldDay.noteTitle} back={address("field-day", job.id)} />
      <TextField label={fieldDay.noteWords} required={false} long value={words} onValue={(text) => form.set({ words: text })} />
      {problem && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
      <label class="button main wide file photo-button" for={id}>
        {fieldDay.photo}
        <input id={id} type="file" accept="image/*" capture="environment" onChange={(event) => void photo(event.currentTarget)} />
      </label>
      <p class="hint">{fieldDay.photoHint}</p>
      <SaveBar saving={saving} onSave={() => void note()} disabled={words.trim() === ""} label={fieldDay.saveNote} />
    </main>
  );
}
