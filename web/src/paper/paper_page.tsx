// Paper of the notebook: choose what goes in, look at it, print it or keep it as a PDF.
import type { JSX } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useSettings } from "@/app/settings";
import { things, useNotebook } from "@/notebook/notebook";
import { Choice, TextField, Tick } from "@/parts/fields";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";
import { canShare, giveFile, shareFile } from "./give_file";
import { deskAnswers, PaperError, pdfFromDesk } from "./desk";
import { calibrationPacket, jobPacket, orderOf, recordPacket, worksheetOrder, type Order, type Packet, type PaperSize } from "./order";
import { nodesOf, sheetsOf } from "./paper_module";
import { PrintButton, PrintSteps, Sheets, usePageSize } from "./sheet_frame";

interface Props {
  /** "job", "record", "calibration" or "worksheet". */
  of: string;
  id: string | undefined;
  /** The room the page stands in. */
  back: "records" | "class";
}

const makers: Record<string, typeof jobPacket> = { job: jobPacket, record: recordPacket, calibration: calibrationPacket };

function backOf({ of, id, back }: Props): string {
  if (of === "record" && id) return address("records", id);
  if (of === "job" && id) return address("jobs", id);
  return address(back);
}

export function PaperPage(props: Props): JSX.Element {
  const { of, id } = props;
  const { records, common } = useWords();
  const version = useNotebook();
  const { language, units } = useSettings();
  const [paper, setPaper] = useState<PaperSize>(units === "metric" ? "a4" : "letter");
  const [left, setLeft] = useState<string[]>([]);
  const [tips, setTips] = useState("12");
  const packet = useMemo(() => (id === undefined ? undefined : makers[of]?.({ things }, id)), [of, id, version]);
  const chosen = packet && { ...packet, parts: packet.parts.filter(({ file }) => !left.includes(file)) };
  const worksheet = of === "worksheet";
  const key = JSON.stringify([chosen, language, units, paper, tips]);
  const order = useMemo<Order | undefined>(() => {
    if (worksheet) return worksheetOrder({ language, units }, paper, Number(tips) || 0);
    return chosen && orderOf(chosen, { language, units }, paper);
  }, [key, worksheet]);
  usePageSize(paper);
  if (!worksheet && packet === undefined) {
    return (
      <main>
        <PageHead title={records.paper} back={backOf(props)} />
        <p class="refusal">{common.notFound}</p>
      </main>
    );
  }
  const name = worksheet ? "worksheet" : `${of}-${packet?.job.name ?? ""}`;
  return (
    <main class="paper-page">
      <PageHead title={worksheet ? records.worksheet : say(records.paperOf, packet?.job.name ?? "")} back={backOf(props)} />
      <div class="no-print">
        <Choice label={records.paperSize} value={paper} options={(["letter", "a4"] as const).map((size) => ({ value: size, label: records.paperSizes[size] }))} onValue={setPaper} />
        {worksheet ? <TextField label={records.worksheetTips} hint={records.worksheetTipsHint} whole value={tips} onValue={setTips} /> : packet && <Contents packet={packet} left={left} onLeft={setLeft} />}
      </div>
      {order && <MadeHere order={order} />}
      {order && <MadeAtDesk order={order} name={name.replace(/[^\p{L}\p{N}]+/gu, "-").toLowerCase()} />}
    </main>
  );
}

function Contents({ packet, left, onLeft }: { packet: Packet; left: string[]; onLeft: (files: string[]) => void }): JSX.Element {
  const { records } = useWords();
  return (
    <Section title={records.goesIn}>
      {packet.parts.length === 0 && <p class="hint">{records.goesInNothing}</p>}
      {packet.parts.map(({ file, name, operation }) => (
        <Tick key={file} label={records.parts[operation]} hint={name} checked={!left.includes(file)} onValue={(on) => onLeft(on ? left.filter((each) => each !== file) : [...left, file])} />
      ))}
    </Section>
  );
}

function troubleWords(error: unknown, words: ReturnType<typeof useWords>["records"]): string {
  if (!(error instanceof PaperError)) return say(words.paperFailed, error instanceof Error ? error.message : String(error));
  if (error.refusal) return say(words.paperRefused, error.refusal.field ?? "", error.refusal.detail);
  return error.reason === "locked" ? words.paperLocked : words.paperAway;
}

function MadeHere({ order }: { order: Order }): JSX.Element | null {
  const { records } = useWords();
  const place = useRef<HTMLDivElement>(null);
  const [state, setState] = useState<"working" | "there" | "failed">("working");
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    let current = true;
    sheetsOf(order)
      .then((html) => {
        if (!current) return;
        place.current?.replaceChildren(nodesOf(html));
        setState("there");
        setTrouble("");
      })
      .catch((error: unknown) => {
        if (!current) return;
        place.current?.replaceChildren();
        setState("failed");
        setTrouble(troubleWords(error, records));
      });
    return () => {
      current = false;
    };
  }, [order]);
  return (
    <>
      <PrintButton disabled={state !== "there"} />
      <PrintSteps />
      {trouble && <p class="refusal no-print">{trouble}</p>}
      {state === "working" && <p role="status">{records.paperWorking}</p>}
      <Sheets>
        <div ref={place} />
      </Sheets>
    </>
  );
}

/** The finished PDF, where a server of ours stands behind the page. */
function MadeAtDesk({ order, name }: { order: Order; name: string }): JSX.Element | null {
  const { records } = useWords();
  const [there, setThere] = useState(false);
  const [file, setFile] = useState<File>();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState("");
  useEffect(() => void deskAnswers().then(setThere), []);
  useEffect(() => setFile(undefined), [order]);
  if (!there) return null;
  const make = async () => {
    setBusy(true);
    setTrouble("");
    try {
      setFile(await pdfFromDesk(order, name));
    } catch (error) {
      setTrouble(troubleWords(error, records));
    } finally {
      setBusy(false);
    }
  };
  return (
    <div class="no-print">
    <Section title={records.pdfTitle}>
      <p class="hint">{records.pdfHint}</p>
      {trouble && <p class="refusal">{trouble}</p>}
      {file === undefined ? (
        <button type="button" class="button wide" disabled={busy} onClick={() => void make()}>
          {busy ? records.paperWorking : records.pdfMake}
        </button>
      ) : (
        <div class="row">
          <button type="button" class="button main" onClick={() => giveFile(file)}>
            {records.pdfSave}
          </button>
          {canShare(file) && (
            <button type="button" class="button" onClick={() => void shareFile(file)}>
              {records.pdfShare}
            </button>
          )}
        </div>
      )}
    </Section>
    </div>
  );
}
