import type { jobs as english } from "../en/jobs";

export const jobs: typeof english = {
  title: "Trabajos",
};
