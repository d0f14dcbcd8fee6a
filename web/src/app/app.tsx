// The frame of every screen: rooms at the thumb, the page above.
import type { ComponentType, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useWords } from "@/words/words";
import { Notices } from "./notices";
import { RoomIcon, type RoomName } from "./room_icon";
import { address, useRoute } from "./route";
import { useSettings } from "./settings";
import { PhonePage } from "./phone";

export interface RoomProps {
  /** What follows the room in the address. */
  path: string[];
}

const rooms: Record<RoomName, { at: string; load: () => Promise<ComponentType<RoomProps>> }> = {
  sprayers: { at: "sprayers", load: async () => (await import("@/rooms/sprayers")).Room },
  ground: { at: "ground", load: async () => (await import("@/rooms/ground")).Room },
  jobs: { at: "jobs", load: async () => (await import("@/rooms/jobs")).Room },
  fieldDay: { at: "field-day", load: async () => (await import("@/rooms/field_day")).Room },
  records: { at: "records", load: async () => (await import("@/rooms/records")).Room },
  classRoom: { at: "class", load: async () => (await import("@/rooms/class_room")).Room },
};
const roomNames = Object.keys(rooms) as RoomName[];

export function App(): JSX.Element {
  const route = useRoute();
  const { gloves } = useSettings();
  const { common } = useWords();
  useEffect(() => {
    document.documentElement.classList.toggle("gloves", gloves);
  }, [gloves]);
  const room = roomNames.find((name) => rooms[name].at === route[0]) ?? (route.length === 0 ? "sprayers" : undefined);
  return (
    <div class="frame">
      <a class="skip" href="#content" onClick={(event) => skip(event)}>
        {common.skip}
      </a>
      <RoomBar current={room} />
      <div class="page" id="content" tabIndex={-1}>
        <Notices />
        {room === undefined ? <PhonePage path={route.slice(1)} /> : <LazyRoom key={room} name={room} path={route.slice(1)} />}
      </div>
    </div>
  );
}

function skip(event: Event): void {
  event.preventDefault();
  document.getElementById("content")?.focus();
}

const loaded = new Map<RoomName, ComponentType<RoomProps>>();

function LazyRoom({ name, path }: { name: RoomName; path: string[] }): JSX.Element {
  const { common } = useWords();
  const [Room, setRoom] = useState(() => loaded.get(name));
  useEffect(() => {
    if (Room !== undefined) return;
    void rooms[name].load().then((made) => {
      loaded.set(name, made);
      setRoom(() => made);
    });
  }, [name]);
  return Room === undefined ? <p class="starting">{common.starting}</p> : <Room path={path} />;
}

function RoomBar({ current }: { current: RoomName | undefined }): JSX.Element {
  const { common } = useWords();
  const labels: Record<RoomName, string> = { ...common.rooms, classRoom: common.rooms.class };
  return (
    <nav class="rooms" aria-label={common.appName}>
      {roomNames.map((name) => (
        <a key={name} href={address(rooms[name].at)} class={name === current ? "room current" : "room"} aria-current={name === current ? "page" : undefined}>
          <RoomIcon name={name} />
          <span>{labels[name]}</span>
        </a>
      ))}
    </nav>
  );
}
