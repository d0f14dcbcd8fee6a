// The version that stands beside every answer that is kept. One place: package.json.
import { version } from "../../package.json";

export const model = `swathbook ${version}`;
