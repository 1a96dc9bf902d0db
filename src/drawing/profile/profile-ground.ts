import type { ProfileStake } from './profile-figures.js';

/** A place along a string: station and elevation in metres. Internal. */
export type Place = readonly [station: number, elevation: number];

/** The existing surface along a part of a string, straight between measured stakes. Internal. */
export function groundWithin(stakes: readonly ProfileStake[], from: number, to: number): Place[] {
  const measured = stakes.flatMap(({ station, ground }): Place[] =>
    ground === null ? [] : [[station, ground]],
  );
  const inside = measured.filter(([station]) => station >= from && station <= to);
  const [start, end] = [placeAt(measured, from), placeAt(measured, to)];
  const isNew = (place: Place | null): place is Place =>
    place !== null && inside.every(([station]) => station !== place[0]);
  return [...(isNew(start) ? [start] : []), ...inside, ...(isNew(end) ? [end] : [])];
}

/** The place at a station on lines from place to place; null beyond them. Internal. */
export function placeAt(places: readonly Place[], station: number): Place | null {
  const index = places.findIndex(([own]) => own >= station);
  const [before, after] = [places[index - 1], places[index]];
  if (after === undefined) return null;
  if (after[0] === station) return after;
  if (before === undefined) return null;
  const share = (station - before[0]) / (after[0] - before[0]);
  return [station, before[1] + share * (after[1] - before[1])];
}

/** Cut or fill between two stations, a closed figure. Internal. */
export interface EarthArea {
  readonly isFill: boolean;
  readonly corners: readonly Place[];
}

/** Cut and fill between the existing surface and the subgrade, split where they cross. Internal. */
export function earthAreas(ground: readonly Place[], subgrade: readonly Place[]): EarthArea[] {
  const stations = [...ground, ...subgrade].map(([station]) => station);
  const first = ground[0]?.[0] ?? 0;
  const last = ground.at(-1)?.[0] ?? first;
  const cuts = [...new Set(stations)].filter((s) => s >= first && s <= last).sort((a, b) => a - b);
  return cuts.slice(1).flatMap((to, index) => {
    const from = cuts[index] ?? to;
    const [a, b] = [placeAt(ground, from), placeAt(ground, to)];
    const [c, d] = [placeAt(subgrade, from), placeAt(subgrade, to)];
    return a === null || b === null || c === null || d === null ? [] : between([a, b], [c, d]);
  });
}

/** Cut and fill between two straight lines over the same stations. */
function between([a, b]: readonly [Place, Place], [c, d]: readonly [Place, Place]): EarthArea[] {
  const [start, end] = [a[1] - c[1], b[1] - d[1]];
  if (start * end >= 0) {
    return start === 0 && end === 0 ? [] : [{ isFill: start + end < 0, corners: [a, b, d, c] }];
  }
  const share = start / (start - end);
  const zero: Place = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  return [
    { isFill: start < 0, corners: [a, zero, c] },
    { isFill: end < 0, corners: [zero, b, d] },
  ];
}
