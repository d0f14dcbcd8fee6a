import { classRoom } from "./class_room";
import { common } from "./common";
import { fieldDay } from "./field_day";
import { ground } from "./ground";
import { jobs } from "./jobs";
import { records } from "./records";
import { sprayers } from "./sprayers";
import { sync } from "./sync";

export const words = { common, sprayers, ground, jobs, fieldDay, records, classRoom, sync };
