import { entry, lastOf } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import { roundFactor } from '../frame/scale.js';
import { spreadRows } from '../frame/spread-rows.js';
import { textWidth } from '../svg/text-width.js';
import type { ProfileFigures, ProfileStake } from './profile-figures.js';

/** A strip of a profile: as many stakes as there is room for; the last of one is the first of the next. Internal. */
export interface Strip {
  readonly stakes: readonly ProfileStake[];
  /** Index of its first stake among all. */
  readonly first: number;
  /** Where the figures of each stake stand. */
  readonly columns: readonly number[];
  /** Elevations at its top and bottom. */
  readonly high: number;
  readonly low: number;
  /** A station along the string. */
  readonly x: (station: number) => number;
}

/** The strips of a profile and their common scale. Internal. */
export interface Strips {
  readonly strips: readonly Strip[];
  /** Width of a column of figures. */
  readonly column: number;
  readonly pixelsPerMetre: number;
  /** Heights over the scale across. */
  readonly factor: number;
}

const LEAST_COLUMN = 58;
const LONGEST_ID = 104;
const HIGH = { wide: 250, narrow: 210 } as const;

/** Cuts a profile into strips that fit its width. Internal. */
export function profileStrips(figures: ProfileFigures, style: DrawStyle): Strips {
  const { stakes } = figures;
  const column = columnWidth(figures, style);
  const room = style.width - 2 * style.margin;
  const most = Math.max(2, Math.floor(room / column));
  const firsts: number[] = [];
  for (let first = 0; first === 0 || first < stakes.length - 1; first += most - 1)
    firsts.push(first);
  const parts = firsts.map((first) => ({ first, stakes: stakes.slice(first, first + most) }));
  const longest = Math.max(...parts.map(({ stakes: own }) => lengthOf(own)));
  const across = longest > 0 ? (room - column) / longest : 1;
  const heights = parts.map(({ stakes: own }) => heightsOf(own, figures));
  const range = Math.max(...heights.map(({ high, low }) => high - low));
  const tall = HIGH[style.isNarrow ? 'narrow' : 'wide'];
  const from = style.margin + column / 2;
  return {
    column,
    pixelsPerMetre: across,
    factor: roundFactor(tall / range / across, 'down'),
    strips: parts.map(({ first, stakes: own }, index) => {
      const start = entry(own, 0).station;
      const x = (station: number): number => from + (station - start) * across;
      const columns = spreadRows(
        own.map(({ station }) => x(station)),
        { spacing: column, from, to: style.width - from },
      );
      return { first, stakes: own, columns, x, ...entry(heights, index) };
    }),
  };
}

const lengthOf = (stakes: readonly ProfileStake[]): number =>
  lastOf(stakes).station - entry(stakes, 0).station;

/** The highest and the lowest of string, ground and subgrade. */
function heightsOf(stakes: readonly ProfileStake[], { subgrade }: ProfileFigures) {
  const all = stakes.flatMap(({ string, ground }) => [
    string,
    string - subgrade,
    ...(ground === null ? [] : [ground]),
  ]);
  return { high: Math.max(...all), low: Math.min(...all) };
}

/** Figures are never cut, names of stakes are. */
function columnWidth({ band }: ProfileFigures, { size }: DrawStyle): number {
  const widths = band.map(({ key, cells }) => {
    const isId = key === 'row-stake';
    const width = Math.max(...cells.map((cell) => textWidth(cell, size, isId)));
    return isId ? Math.min(width, LONGEST_ID) : width;
  });
  return Math.max(LEAST_COLUMN, ...widths) + 12;
}
