// The start: core and notebook are opened side by side, then the first screen is drawn.
import { render } from "preact";
import { App } from "@/app/app";
import { settings } from "@/app/settings";
import { startDrop } from "@/app/drop";
import { startOffline } from "@/app/offline";
import { loadCore } from "@/core/core";
import { database } from "@/notebook/database";
import { openForms } from "@/notebook/forms";
import { openNotebook } from "@/notebook/notebook";
import { openRecorder } from "@/positions/recorder";
import { speak } from "@/words/words";
import { CannotStart } from "@/app/cannot_start";
import { startLasting } from "@/notebook/lasting";
import { rememberToken, startSync } from "@/notebook/sync";

const place = document.getElementById("app") as HTMLElement;

async function start(): Promise<void> {
  rememberToken();
  await Promise.all([loadCore(), database(), openForms()]);
  await Promise.all([openNotebook(), speak(settings.now().language)]);
  place.textContent = "";
  render(<App />, place);
  performance.mark("swathbook interactive");
  startOffline();
  startDrop();
  startLasting();
  startSync();
  void openRecorder();
}

start().catch((error: unknown) => {
  place.textContent = "";
  render(<CannotStart error={error} />, place);
});
