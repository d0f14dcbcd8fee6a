import type { sync as english } from "../en/sync";

export const sync: typeof english = {
  title: "Este teléfono",
  entriesHere: { one: "{0} anotación guardada aquí", many: "{0} anotaciones guardadas aquí" },
  updateWaits: "Hay un Swathbook más nuevo. Lo que escribió y guardó se queda.",
  updateTake: "Usarlo ahora",
  conflictsFound: { one: "{0} anotación de otro aparato no se pudo aplicar sin más.", many: "{0} anotaciones de otros aparatos no se pudieron aplicar sin más." },
  conflictsLook: "Verlas",
};
