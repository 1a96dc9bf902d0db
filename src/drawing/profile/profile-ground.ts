import { entry, lastOf } from '../../invariant.js';
import type { ProfileStake } from './profile-figures.js';

/** A place along a string: station and elevation in metres. Internal. */
export type Place = readonly [station: number, elevation: number];

/** The existing surface, straight between measured stakes. Internal. */
export const groundLine = (stakes: readonly ProfileStake[]): Place[] =>
  stakes.flatMap(({ station, ground }): Place[] => (ground === null ? [] : [[station, ground]]));

/** The part of it along a part of a string. Internal. */
export function groundWithin(measured: readonly Place[], from: number, to: number): Place[] {
  const inside = measured.filter(([station]) => station >= from && station <= to);
  const isNew = (place: Place | null): place is Place =>
    place !== null && inside.every(([station]) => station !== place[0]);
  const [start, end] = [placeAt(measured, from), placeAt(measured, to)];
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

/** A stretch of cut or of fill: the existing surface above or below the subgrade. Internal. */
export interface EarthArea {
  readonly isFill: boolean;
  readonly ground: readonly Place[];
  readonly subgrade: readonly Place[];
}

/** Cut and fill between the existing surface and the subgrade, split where they cross. Internal. */
export function earthAreas(ground: readonly Place[], subgrade: readonly Place[]): EarthArea[] {
  const stations = [...ground, ...subgrade].map(([station]) => station);
  const first = entry(ground, 0)[0];
  const last = lastOf(ground)[0];
  const cuts = [...new Set(stations)].filter((s) => s >= first && s <= last).sort((a, b) => a - b);
  const pieces = cuts.slice(1).flatMap((to, index) => {
    const from = entry(cuts, index);
    const [a, b] = [placeAt(ground, from), placeAt(ground, to)];
    const [c, d] = [placeAt(subgrade, from), placeAt(subgrade, to)];
    return a === null || b === null || c === null || d === null ? [] : between([a, b], [c, d]);
  });
  return asStretches(pieces);
}

/** Cut and fill between two straight lines over the same stations. */
function between([a, b]: readonly [Place, Place], [c, d]: readonly [Place, Place]): EarthArea[] {
  const [start, end] = [a[1] - c[1], b[1] - d[1]];
  if (start * end >= 0) {
    if (start === 0 && end === 0) return [];
    return [{ isFill: start + end < 0, ground: [a, b], subgrade: [c, d] }];
  }
  const share = start / (start - end);
  const zero: Place = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  return [
    { isFill: start < 0, ground: [a, zero], subgrade: [c] },
    { isFill: end < 0, ground: [zero, b], subgrade: [d] },
  ];
}

/** Neighbours that are both cut or both fill, as one. */
function asStretches(pieces: readonly EarthArea[]): EarthArea[] {
  const stretches: EarthArea[] = [];
  for (const piece of pieces) {
    const before = stretches.at(-1);
    const meets = before?.ground.at(-1)?.[0] === piece.ground[0]?.[0];
    if (before === undefined || !meets || before.isFill !== piece.isFill) stretches.push(piece);
    else {
      stretches[stretches.length - 1] = {
        isFill: piece.isFill,
        ground: [...before.ground, ...piece.ground.slice(1)],
        subgrade: [...before.subgrade, ...piece.subgrade.slice(1)],
      };
    }
  }
  return stretches;
}

/** The corners of a stretch, a closed figure. Internal. */
export const cornersOfArea = ({ ground, subgrade }: EarthArea): Place[] => [
  ...ground,
  ...[...subgrade].reverse(),
];
