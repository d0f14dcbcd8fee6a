import type { fieldDay as english } from "../en/field_day";

export const fieldDay: typeof english = {
  title: "En campo",
};
