import { fault } from '../../errors.js';
import { optional, quantity } from '../../input/field.js';
import { FALL_OF_SOME, SITE_LENGTH, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { LengthInput, SlopeInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
// a taper is base in place
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';

/** Two pavements that meet on bases of different thickness. */
export interface BaseTaperOptions {
  /** Compacted base of the first pavement [length], more than 0 and at most 5 m. */
  readonly first: LengthInput;
  /** Compacted base of the second pavement [length], more than 0 and at most 5 m. */
  readonly second: LengthInput;
  /** Slope of the subgrade in the taper, rise over run [slope], more than 0 and at most 1: `1:4`. */
  readonly slope: SlopeInput;
  /** Width across the taper [length], more than 0 and at most 10 km. */
  readonly width: LengthInput;
  /** Distance between stations [length], at most 200 stations. Default: a quarter of the taper. */
  readonly spacing?: LengthInput;
}

const OPTIONS = shapeOf<BaseTaperOptions>()({
  first: quantity(THICKNESS),
  second: quantity(THICKNESS),
  slope: quantity(FALL_OF_SOME),
  width: quantity(SITE_LENGTH),
  spacing: optional(quantity(SITE_LENGTH)),
});

/** A station of the taper. */
export interface TaperStation {
  /** Distance from the thick end. */
  readonly station: Length;
  /** Compacted base there. */
  readonly thickness: Length;
}

/** The taper from a thick base to a thin one. */
export interface BaseTaper extends Cautioned, Worked {
  /** Length of the taper in plan. */
  readonly length: Length;
  /** Volume of base in the taper. */
  readonly volume: StateVolume<'compacted'>;
  /** Side that tapers: always the thinner base, so the thicker one keeps its full depth. */
  readonly side: 'first' | 'second' | 'none';
  /** Thickness at each station, from the thick end to the thin end. */
  readonly stations: readonly TaperStation[];
}

/**
 * Tapered step of the subgrade between two build-ups, such as drive and walk:
 * `L = |T1 - T2| / slope`, `V = w (T1 + T2) / 2 x L`. The taper is on the thin side.
 *
 * @param options - see {@link BaseTaperOptions}
 * @returns length [length], compacted volume, side, thickness at stations; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const step = baseTaper({ first: '0.2 m', second: '0.1 m', slope: '1:4', width: '1.5 m' });
 * step.length.to('m').toString() //=> '0.4'
 * step.volume.to('m3').toString() //=> '0.09'
 * step.side //=> 'second'
 */
export function baseTaper(options: BaseTaperOptions): BaseTaper {
  const { first, second, slope: fall, width, spacing } = readOptions(options, OPTIONS);
  const step = first.minus(second).abs();
  const run = step.dividedBy(fall);
  if (spacing !== undefined && run.compare(spacing.times(MOST_STATIONS)) > 0) {
    const message = `makes more than ${MOST_STATIONS} stations. Write a larger spacing`;
    throw fault('CAPACITY_EXCEEDED', message, { most: MOST_STATIONS }, ['spacing']);
  }
  const order = first.compare(second);
  const thick = order < 0 ? second : first;
  const volume = width.times(run).times(first.plus(second).dividedBy(2));
  const every = spacing ?? run.dividedBy(4);
  const found = {
    length: run,
    volume: inState(volume, 'compacted'),
    side: order === 0 ? ('none' as const) : order > 0 ? ('second' as const) : ('first' as const),
    stations: stationsUpTo(run, every).map((station) => ({
      station,
      thickness: thick.minus(station.times(fall)),
    })),
    cautions: cautionsFor('structure'),
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Length of the taper',
      formula: 'L = abs(T1 - T2) / s',
      given: [
        given('T1', 'first base', first),
        given('T2', 'second base', second),
        given('s', 'slope', fall),
      ],
      result: given('L', 'length', run),
    }),
    derivedStep({
      title: 'Base in the taper',
      formula: 'V = w * L * (T1 + T2) / 2',
      given: [
        given('w', 'width', width),
        given('L', 'length', run),
        given('T1', 'first base', first),
        given('T2', 'second base', second),
      ],
      result: given('V', 'compacted volume', volume),
    }),
  ]);
}

const MOST_STATIONS = 200;

function stationsUpTo(run: Length, every: Length): Length[] {
  const stations: Length[] = [NO_LENGTH];
  if (run.isZero()) return stations;
  for (let next = every; next.compare(run) < 0; next = next.plus(every)) stations.push(next);
  return [...stations, run];
}
