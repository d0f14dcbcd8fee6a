// The one way to save: says who writes if nobody said it yet, says when it is on this phone, and when it is
// not, why. A form is emptied only after its entry is on disk.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { changeSettings, settings } from "@/app/settings";
import { write, WriteError, type Draft } from "@/notebook/notebook";
import { say, useWords } from "@/words/words";
import { TextField } from "./fields";
import { Panel } from "./panel";

interface Saving {
  /** Writes; true when it is on disk. */
  save: (drafts: Draft[]) => Promise<boolean>;
  busy: boolean;
  /** What went wrong, for people; also the question who writes. Put it beside the button. */
  trouble: JSX.Element | null;
}

export function useSaving(): Saving {
  const { common } = useWords();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string>();
  const [asking, setAsking] = useState<{ drafts: Draft[]; resolve: (saved: boolean) => void }>();

  const attempt = async (drafts: Draft[]): Promise<boolean> => {
    setBusy(true);
    setProblem(undefined);
    try {
      await write(drafts);
      return true;
    } catch (error) {
      setProblem(textOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  const textOf = (error: unknown): string => {
    if (error instanceof WriteError && error.reason === "full") return common.full;
    if (error instanceof WriteError && error.reason === "refused") return error.message;
    return say(common.writeFailed, error instanceof Error ? error.message : String(error));
  };
  const save = (drafts: Draft[]): Promise<boolean> => {
    if (settings.now().author.trim() !== "") return attempt(drafts);
    return new Promise((resolve) => setAsking({ drafts, resolve }));
  };
  const answered = async (name: string | undefined) => {
    const waiting = asking;
    setAsking(undefined);
    if (name === undefined || waiting === undefined) return waiting?.resolve(false);
    changeSettings({ author: name });
    waiting.resolve(await attempt(waiting.drafts));
  };
  const trouble = (
    <>
      {problem && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
      {asking && <AskWho onName={(name) => void answered(name)} />}
    </>
  );
  return { save, busy, trouble };
}

function AskWho({ onName }: { onName: (name: string | undefined) => void }): JSX.Element {
  const { common } = useWords();
  const [name, setName] = useState("");
  return (
    <Panel title={common.who} onClose={() => onName(undefined)}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() !== "") onName(name.trim());
        }}
      >
        <TextField label={common.name} hint={common.whoHint} value={name} onValue={setName} />
        <button class="button main wide" disabled={name.trim() === ""}>
          {common.save}
        </button>
      </form>
    </Panel>
  );
}

interface SaveBarProps {
  saving: Saving;
  onSave: () => void;
  disabled?: boolean;
  label?: string;
  /** Beside the main button. */
  children?: JSX.Element | null;
  /** Above it, always in sight: what the form comes to while it is typed. */
  live?: string;
}

/** The main button of a form, always under the thumb. */
export function SaveBar({ saving, onSave, disabled, label, children, live }: SaveBarProps): JSX.Element {
  const { common } = useWords();
  return (
    <div class="save-bar">
      {saving.trouble}
      {live && (
        <p class="save-live" role="status">
          {live}
        </p>
      )}
      <div class="save-row">
        {children}
        <button type="button" class="button main" disabled={disabled || saving.busy} onClick={onSave}>
          {saving.busy ? common.saving : (label ?? common.save)}
        </button>
      </div>
    </div>
  );
}
