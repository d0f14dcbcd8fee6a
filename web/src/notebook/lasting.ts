// Whether the phone promises to keep what is written here, and how much room there is.
import { changing } from "@/app/changing";
import { onWritten } from "./notebook";

export interface Lasting {
  /** The browser promised not to clear this notebook by itself; undefined while unknown. */
  promised?: boolean;
  used?: number;
  room?: number;
}

export const lasting = changing<Lasting>({});

async function look(): Promise<void> {
  const promised = await navigator.storage?.persisted?.().catch(() => undefined);
  const { usage, quota } = (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};
  lasting.set({ promised, used: usage, room: quota });
}

/** Asks the browser for the promise; it may ask the person, or decide by itself. */
export async function askToKeep(): Promise<void> {
  await navigator.storage?.persist?.().catch(() => false);
  await look();
}

/** Asked once, after the first save: then the person sees what is to be kept. */
export function startLasting(): void {
  void look();
  let asked = false;
  onWritten(() => {
    if (asked) return void look();
    asked = true;
    void askToKeep();
  });
}
