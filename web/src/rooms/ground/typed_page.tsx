import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { newId } from "@/notebook/notebook";
import { useForm } from "@/notebook/forms";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { ask } from "@/core/core";
import { useWords } from "@/words/words";
import { StandWordFields } from "./stand_words";
import type { StandWords } from "./ground_of";

export function TypedPage(): JSX.Element {
  const { ground } = useWords();
  const form = useForm<StandWords & { area: string }>("stand/typed", { name: "", area: "" });
  const saving = useSaving();
  const [tried, setTried] = useState(false);
  const { area, ...words } = form.value;
  // The core reads the amount where it is used: a tankful for this ground, only to hear whether it can.
  const refusal = ask("loads", { net_area: area, mix_per_area: "10 gal/ac", tank_usable: "50 gal", products: [] }).refusal;
  const areaError = refusal?.field === "net_area" ? refusal.detail : area === "" ? ground.areaHint : undefined;
  const save = async () => {
    setTried(true);
    if (words.name.trim() === "" || areaError !== undefined) return;
    const subject = newId();
    const saved = await saving.save([{ kind: "stand", subject, body: { ...words, how: "typed", typed_area: area } }]);
    if (!saved) return;
    form.clear();
    goInstead("ground", subject);
  };
  return (
    <main>
      <PageHead title={ground.typed} back={address("ground")} />
      <AmountField label={ground.area} value={area} units={unitsOf.area} error={tried ? areaError : undefined} onValue={(text) => form.set({ area: text })} />
      <StandWordFields value={words} nameError={tried && words.name.trim() === "" ? ground.needName : undefined} onValue={(part) => form.set(part)} />
      <SaveBar saving={saving} onSave={() => void save()} label={ground.save} />
    </main>
  );
}
