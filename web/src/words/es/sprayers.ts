import type { sprayers as english } from "../en/sprayers";

export const sprayers: typeof english = {
  title: "Equipos",
};
