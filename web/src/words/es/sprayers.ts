import type { sprayers as english } from "../en/sprayers";
import { sprayers as words } from "../en/sprayers";

export const sprayers: typeof english = { ...words, title: "Equipos" };
