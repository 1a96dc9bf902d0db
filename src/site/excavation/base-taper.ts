import { makeReader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { slope, type LengthInput, type SlopeInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
// a taper is base in place
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { given, withWorking, type Worked } from '../../working.js';
import { DEPTH, LENGTH } from '../limits.js';

/** A station of the taper. */
export interface TaperStation {
  /** From the thick end. */
  readonly station: Length;
  readonly thickness: Length;
}

/** The run over which a thick base becomes a thin one. */
export interface BaseTaper extends Worked {
  readonly length: Length;
  readonly volume: StateVolume<'compacted'>;
  /** On which side it lies: always the thin one, so that the thick base is whole. */
  readonly side: 'first' | 'second' | 'none';
  /** Thickness from the thick end on, at every spacing and at the thin end. */
  readonly stations: readonly TaperStation[];
  readonly cautions: readonly Caution[];
}

/**
 * Tapered step of the subgrade between two build-ups, such as drive and walk: `L = |T1 - T2| / slope`,
 * `V = w (T1 + T2) / 2 x L`. It goes on the thin side.
 *
 * @param options.first - compacted base of the first pavement [length]
 * @param options.second - compacted base of the second [length]
 * @param options.slope - of the subgrade in the taper, rise over run, up to 1 [slope]: `1:4`
 * @param options.width - across the taper [length]
 * @param options.spacing - between stations [length], default a quarter of the taper
 * @returns length [length], compacted volume, side, thickness at stations; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const step = baseTaper({ first: '0.2 m', second: '0.1 m', slope: '1:4', width: '1.5 m' });
 * step.length.to('m').toString() //=> '0.4'
 * step.volume.to('m3').toString() //=> '0.09'
 * step.side //=> 'second'
 */
export function baseTaper(options: {
  readonly first: LengthInput;
  readonly second: LengthInput;
  readonly slope: SlopeInput;
  readonly width: LengthInput;
  readonly spacing?: LengthInput;
}): BaseTaper {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const first = reader.quantity('length', fields['first'], ['first'], DEPTH);
  const second = reader.quantity('length', fields['second'], ['second'], DEPTH);
  const fall = reader.quantity('slope', fields['slope'], ['slope'], SLOPE);
  const width = reader.quantity('length', fields['width'], ['width'], LENGTH);
  const spacing =
    fields['spacing'] === undefined
      ? undefined
      : reader.quantity('length', fields['spacing'], ['spacing'], LENGTH);
  reader.finish();

  const step = first.minus(second).abs();
  const run = step.dividedBy(fall);
  if (spacing !== undefined && run.compare(spacing.times(MOST_STATIONS)) > 0) {
    reader.fail('CAPACITY_EXCEEDED', ['spacing'], `more than ${MOST_STATIONS} stations`);
    reader.finish();
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
    {
      title: 'Length of the taper',
      formula: 'L = |T1 - T2| / s',
      given: [
        given('T1', 'first base', first),
        given('T2', 'second base', second),
        given('s', 'slope', fall),
      ],
      result: given('L', 'length', run),
      source: 'derived',
    },
    {
      title: 'Base in the taper',
      formula: 'V = w L (T1 + T2) / 2',
      given: [given('w', 'width', width), given('L', 'length', run)],
      result: given('V', 'compacted volume', volume),
      source: 'derived',
    },
  ]);
}

const SLOPE = Object.freeze({ sign: 'positive', most: slope(1, 'ratio') } as const);
const MOST_STATIONS = 200;

function stationsUpTo(run: Length, every: Length): Length[] {
  const stations: Length[] = [run.minus(run)];
  if (run.isZero()) return stations;
  for (let next = every; next.compare(run) < 0; next = next.plus(every)) stations.push(next);
  return [...stations, run];
}
