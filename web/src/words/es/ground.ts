import type { ground as english } from "../en/ground";

export const ground: typeof english = {
  title: "Terreno",
};
