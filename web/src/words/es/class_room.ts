import type { classRoom as english } from "../en/class_room";

export const classRoom: typeof english = {
  title: "Clase",
};
