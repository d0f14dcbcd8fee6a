// This phone: settings, what is kept here, and how it travels.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useWords } from "@/words/words";
import { CheckPart } from "./check_part";
import { ConflictsPage } from "./conflicts_page";
import { KeptPart } from "./kept_part";
import { SettingsPart } from "./settings_part";
import { SyncPart } from "./sync_part";
import { BringPart, TakePart } from "./travel_parts";

export function PhonePage({ path }: { path: string[] }): JSX.Element {
  const { sync } = useWords();
  if (path[0] === "conflicts") return <ConflictsPage />;
  return (
    <main>
      <PageHead title={sync.title} back={address("sprayers")} />
      <SettingsPart />
      <KeptPart />
      <TakePart />
      <BringPart />
      <SyncPart />
      <CheckPart />
    </main>
  );
}
