import type { JSX } from "preact";

export type RoomName = "sprayers" | "ground" | "jobs" | "fieldDay" | "records" | "classRoom";

// Plain line drawings: a fan of spray, a bounded piece of ground, a jug, a flag, a book, a board.
const lines: Record<RoomName, string> = {
  sprayers: "M4 6h16M7 6v3M17 6v3M7 9l-3 10M7 9l3 10M17 9l-3 10M17 9l3 10",
  ground: "M4 9l6-5 9 3 1 9-7 4-9-3z",
  jobs: "M8 3h6v4l4 3v10H6V10l2-3zM6 14h12",
  fieldDay: "M6 21V3l12 4-12 5",
  records: "M5 4h14v16H5zM9 4v16M12 9h4M12 13h4",
  classRoom: "M3 4h18v12H3zM8 21l2-5M16 21l-2-5M7 12l3-4 3 3 4-4",
};

export function RoomIcon({ name }: { name: RoomName }): JSX.Element {
  return (
    <svg viewBox="0 0 24 24" width="26" height="26" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" stroke-linecap="round" aria-hidden="true">
      <path d={lines[name]} />
    </svg>
  );
}
