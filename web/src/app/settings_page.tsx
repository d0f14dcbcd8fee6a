// This phone: who writes, language, units, gloves; and what is kept here.
import type { JSX } from "preact";
import { Choice, TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { speak, useWords } from "@/words/words";
import type { RoomProps } from "./app";
import { PageHead } from "./page_head";
import { address } from "./route";
import { changeSettings, useSettings, type Language } from "./settings";

export function SettingsPage(_props: RoomProps): JSX.Element {
  const { common, sync } = useWords();
  const { units, language, gloves, sound, author } = useSettings();
  const onOff = [
    { value: "on", label: common.on },
    { value: "off", label: common.off },
  ];
  const choose = (chosen: Language) => {
    void speak(chosen).then(() => changeSettings({ language: chosen }));
  };
  return (
    <main>
      <PageHead title={sync.title} back={address("sprayers")} />
      <Section title={common.settings}>
        <TextField label={common.who} hint={common.whoHint} value={author} onValue={(name) => changeSettings({ author: name })} />
        <Choice
          label={common.language}
          value={language}
          options={[
            { value: "en", label: "English" },
            { value: "es", label: "Español" },
          ]}
          onValue={choose}
        />
        <Choice
          label={common.units}
          value={units}
          options={[
            { value: "us", label: common.unitsUs },
            { value: "metric", label: common.unitsMetric },
          ]}
          onValue={(chosen) => changeSettings({ units: chosen })}
        />
        <Choice label={common.gloves} hint={common.glovesHint} value={gloves ? "on" : "off"} options={onOff} onValue={(chosen) => changeSettings({ gloves: chosen === "on" })} />
        <Choice label={common.sound} hint={common.soundHint} value={sound ? "on" : "off"} options={onOff} onValue={(chosen) => changeSettings({ sound: chosen === "on" })} />
      </Section>
    </main>
  );
}
