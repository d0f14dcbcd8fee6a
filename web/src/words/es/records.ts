import type { records as english } from "../en/records";

export const records: typeof english = {
  title: "Registros",
};
