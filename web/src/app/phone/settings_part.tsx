// Who writes, language, units, gloves, sound.
import type { JSX } from "preact";
import { changeSettings, useSettings, type Language } from "@/app/settings";
import { Choice, TextField } from "@/parts/fields";
import { Section } from "@/parts/list";
import { speak, useWords } from "@/words/words";

export function SettingsPart(): JSX.Element {
  const { common } = useWords();
  const { units, language, gloves, sound, author } = useSettings();
  const onOff = [
    { value: "on", label: common.on },
    { value: "off", label: common.off },
  ];
  const choose = (chosen: Language) => {
    void speak(chosen).then(() => changeSettings({ language: chosen }));
  };
  return (
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
          { value: "us", label: common.unitsUs, hint: common.unitsUsHint },
          { value: "metric", label: common.unitsMetric, hint: common.unitsMetricHint },
        ]}
        onValue={(chosen) => changeSettings({ units: chosen })}
      />
      <Choice label={common.gloves} hint={common.glovesHint} value={gloves ? "on" : "off"} options={onOff} onValue={(chosen) => changeSettings({ gloves: chosen === "on" })} />
      <Choice label={common.sound} hint={common.soundHint} value={sound ? "on" : "off"} options={onOff} onValue={(chosen) => changeSettings({ sound: chosen === "on" })} />
    </Section>
  );
}
