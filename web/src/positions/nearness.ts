// Near or far, for thinning and for warnings only: a flat picture of the earth, never shown as a number.
export interface Place {
  lat: number;
  lon: number;
}

const metresPerDegree = 111_195;

/** About how many metres lie between; good to a percent over a field, rough over a continent. */
export function roughMetres(a: Place, b: Place): number {
  const east = (b.lon - a.lon) * Math.cos(((a.lat + b.lat) / 2) * (Math.PI / 180));
  return Math.hypot(east, b.lat - a.lat) * metresPerDegree;
}

/** Leaves out what came while standing still: positions nearer than `least` metres to the last one kept. */
export function thinned<P extends Place & { part: number }>(places: P[], least: number): P[] {
  const kept: P[] = [];
  for (const place of places) {
    const last = kept.at(-1);
    if (last === undefined || last.part !== place.part || roughMetres(last, place) >= least) kept.push(place);
  }
  return kept;
}
