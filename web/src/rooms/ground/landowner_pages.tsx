import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address, goInstead } from "@/app/route";
import { useForm } from "@/notebook/forms";
import { newId, useThing, useThings } from "@/notebook/notebook";
import type { Landowner } from "@/notebook/things";
import { TextField } from "@/parts/fields";
import { ThingList, ThingRow } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { useWords } from "@/words/words";

export function LandownersPage(): JSX.Element {
  const { ground } = useWords();
  const owners = useThings("landowner");
  return (
    <main>
      <PageHead title={ground.landowners} back={address("ground")} />
      <ThingList empty={ground.noLandowners}>
        {owners.map(({ id, fields }) => (
          <ThingRow key={id} href={address("ground", "landowners", id)} title={fields.name} note={[fields.address, fields.phone].filter(Boolean).join(" · ")} />
        ))}
      </ThingList>
      <a class="button main wide" href={address("ground", "landowners", "new")}>
        {ground.newLandowner}
      </a>
    </main>
  );
}

export function LandownerPage({ id }: { id: string }): JSX.Element {
  const { ground, common } = useWords();
  const known = useThing("landowner", id === "new" ? undefined : id);
  const form = useForm<Landowner>(`landowner/${id}`, known?.fields ?? { name: "" });
  const saving = useSaving();
  const save = async () => {
    const saved = await saving.save([{ kind: "landowner", subject: known?.id ?? newId(), body: { ...form.value } }]);
    if (!saved) return;
    form.clear();
    goInstead("ground", "landowners");
  };
  return (
    <main>
      <PageHead title={known?.fields.name ?? ground.newLandowner} back={address("ground", "landowners")} />
      <TextField label={common.name} value={form.value.name} onValue={(name) => form.set({ name })} />
      <TextField label={ground.address} required={false} long value={form.value.address} onValue={(place) => form.set({ address: place })} />
      <TextField label={ground.phone} required={false} type="tel" value={form.value.phone} onValue={(phone) => form.set({ phone })} />
      <SaveBar saving={saving} onSave={() => void save()} disabled={form.value.name.trim() === ""} />
    </main>
  );
}
