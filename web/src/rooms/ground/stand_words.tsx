// The names and notes of a stand, the same on every way to make one.
import type { JSX } from "preact";
import { useThings } from "@/notebook/notebook";
import { Pick, TextField } from "@/parts/fields";
import { useWords } from "@/words/words";
import type { StandWords } from "./ground_of";

interface Props {
  value: StandWords;
  onValue: (value: Partial<StandWords>) => void;
  nameError?: string;
}

export function StandWordFields({ value, onValue, nameError }: Props): JSX.Element {
  const { ground } = useWords();
  const owners = useThings("landowner");
  return (
    <>
      <TextField label={ground.name} value={value.name} error={nameError} onValue={(name) => onValue({ name })} />
      {owners.length > 0 && (
        <Pick
          label={ground.landowner}
          required={false}
          value={value.landowner}
          options={owners.map(({ id, fields }) => ({ value: id, label: fields.name }))}
          onValue={(landowner) => onValue({ landowner })}
        />
      )}
      <TextField label={ground.place} hint={ground.placeHint} required={false} value={value.place} onValue={(place) => onValue({ place })} />
      <TextField label={ground.notes} required={false} long value={value.notes} onValue={(notes) => onValue({ notes })} />
    </>
  );
}
