// The app as one versioned set of files on this phone: registered after the first screen stands.
import { changing } from "./changing";

/** A newer version that waits until the person says so. */
export const waitingUpdate = changing<ServiceWorker | undefined>(undefined);
/** True once every file of the app is on this phone. */
export const readyOffline = changing(false);

/** A phone needs localhost or trusted HTTPS; a plain address in the local network cannot do it. */
export const canBeOffline = "serviceWorker" in navigator;

export function startOffline(): void {
  if (!canBeOffline || import.meta.env.DEV) return;
  void register().catch((error: unknown) => console.warn("offline set not installed:", error));
}

async function register(): Promise<void> {
  const registration = await navigator.serviceWorker.register("./service_worker.js", { updateViaCache: "none" });
  const watch = (worker: ServiceWorker | null) => {
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed" && navigator.serviceWorker.controller) waitingUpdate.set(worker);
    });
  };
  if (registration.waiting && navigator.serviceWorker.controller) waitingUpdate.set(registration.waiting);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  await navigator.serviceWorker.ready;
  readyOffline.set(true);
}

/** Takes the newer version over and begins again with it; forms and entries are on disk already. */
export function takeUpdate(): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waitingUpdate.now()?.postMessage("take over");
}
