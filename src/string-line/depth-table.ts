// string-line uses build-up: the depths below a string are the depths of a build-up, moved up
import type { BuildUp } from '../build-up/build-up.js';
import { builtUp } from '../build-up/built-up.js';
import { list, object, optional, quantity } from '../input/field.js';
import { SITE_LENGTH, STRING_HEIGHT } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { entry } from '../invariant.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { max } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { ZERO } from '../units/decimal.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  parabolaSag,
  requireTaut,
  shapeLength,
  STRING,
  type HangingLine,
  type StringInput,
} from './hanging-line.js';
import {
  liftsOfLayers,
  requireLayers,
  splitLayers,
  surfacesBelow,
  type LiftsInput,
  type SurfaceBelowString,
} from './lift-surfaces.js';
import { requireForward, TIE, type Tie, type TieInput } from './ties.js';

/** A string over a build-up, and the rows of the table. */
export interface DepthTableOptions {
  /** The layers that go in, from `buildUp`. */
  readonly buildUp: BuildUp;
  /** String above finished grade [length], 0 to 5 m. */
  readonly stringHeight: LengthInput;
  /** At least 2 stakes that the string is tied to, in order along it. */
  readonly stakes: readonly TieInput[];
  /** Largest distance between rows [length], more than 0 and at most 10 km. Default: no rows between stakes. */
  readonly spacing?: LengthInput;
  /** Layers placed in lifts. Default: none. */
  readonly lifts?: readonly LiftsInput[];
  /** The string, to deduct its sag (as for a level string). Default: no sag. */
  readonly string?: StringInput;
}

const OPTIONS = shapeOf<DepthTableOptions>()({
  buildUp: builtUp,
  stringHeight: quantity(STRING_HEIGHT),
  stakes: list(object(TIE), { of: 'stakes', least: 2, unique: 'id' }),
  spacing: optional(quantity(SITE_LENGTH)),
  lifts: optional(liftsOfLayers, []),
  string: optional(object(STRING)),
});

/** What to measure down at one point along the string. */
export interface DepthRow {
  /** Distance along the string [length]. */
  readonly station: Length;
  /** Id of the stake; null between stakes. */
  readonly stake: string | null;
  /** Sag of the string here [length]. */
  readonly sag: Length;
  /** From the string as it hangs down to each surface, in the order of `surfaces` [length]. */
  readonly depths: readonly Length[];
}

/** What to measure down from a string to every surface. */
export interface DepthTable extends Cautioned, Worked {
  /**
   * From finished grade down, tops of lifts included; depths below the straight line from tie to
   * tie.
   */
  readonly surfaces: readonly SurfaceBelowString[];
  /** A row for each stake, and for each point between. */
  readonly rows: readonly DepthRow[];
  /** Largest sag of the string [length]; 0 if no string is given. */
  readonly maximumSag: Length;
}

/** More rows than this are a mistake. */
const MOST_ROWS = 2000;

/**
 * The table a crew measures down by, at every stake and between stakes: from the string to finished
 * grade, to the top of each layer and lift (loose and compacted), and to the subgrade. If you give
 * the tension and weight of the string, its sag is deducted, because the string is low between
 * stakes: `depth = h + d - w x (L - x) / (2 H)`. Exact.
 *
 * @param options - see {@link DepthTableOptions}
 * @returns surfaces and rows of depths [length, positive down], largest sag
 * @throws `TOO_FEW`, `NOT_INCREASING`, `DUPLICATE_ID`, `UNKNOWN_ID`, `NEGATIVE`,
 *   `OUT_OF_RANGE` (more than 2000 rows or 500 lifts) and the reading codes
 * @source derived
 * @example
 * const drive = buildUp({ layers: [{ name: 'paver', thickness: '60 mm' }, { name: 'base', thickness: '200 mm' }] });
 * const table = depthTable({
 *   buildUp: drive,
 *   stringHeight: '150 mm',
 *   stakes: [{ id: 'E1', station: '0 m' }, { id: 'E2', station: '15 m' }],
 *   spacing: '7.5 m',
 *   lifts: [{ layer: 'base', maxLift: '100 mm', compactedPerLoose: '0.8' }],
 *   string: { tension: '60 N', weightPerLength: '1.2 g/m' },
 * });
 * table.surfaces.map(({ surface }) => surface) //=> ['finished grade', 'base lift 2 loose', 'base top', 'base lift 1 loose', 'base lift 1 top', 'subgrade']
 * table.rows.map(({ depths }) => depths.at(-1)?.to('mm').toFixed(1)) //=> ['410.0', '404.5', '410.0']
 */
export function depthTable(options: DepthTableOptions): DepthTable {
  const {
    buildUp,
    stringHeight: height,
    stakes,
    spacing,
    lifts,
    string,
  } = readOptions(options, OPTIONS, checkTable);
  const spans = spansOf(stakes);
  const surfaces = surfacesBelow(buildUp, height, splitLayers(lifts, buildUp));
  const rows = placesAlong(spans, spacing, string).map((place) => ({
    ...place,
    depths: surfaces.map(({ below }) => below.minus(place.sag)),
  }));
  const maximumSag = max(spans.map(({ long }) => sagAt(long, long.dividedBy(2), string)));
  return withWorking(
    { surfaces, rows, maximumSag, cautions: cautionsFor('utilities', 'excavation', 'trees') },
    () => [
      ...surfaces.map((surface) => surfaceStep(surface, height)),
      ...sagSteps(spans, string, maximumSag),
    ],
  );
}

const checkTable: Check<typeof OPTIONS> = (reader, values, path) => {
  const { buildUp, stakes, spacing, lifts, string } = values;
  if (buildUp !== undefined && lifts !== undefined) requireLayers(reader, lifts, buildUp);
  if (stakes === undefined) return;
  requireForward(reader, stakes);
  const spans = spansOf(stakes).map(({ long }) => long);
  if (string !== undefined) {
    requireTaut(reader, { spans, line: string }, [...path, 'string', 'tension']);
  }
  if (spacing === undefined) return;
  const rows = spans.reduce((sum, long) => sum + long.dividedBy(spacing).toNumber(), 0);
  if (rows <= MOST_ROWS) return;
  const message = `makes more than ${MOST_ROWS} rows. Check the digits and the unit`;
  reader.fail('OUT_OF_RANGE', [...path, 'spacing'], message, { most: MOST_ROWS });
};

interface Span {
  readonly from: Tie;
  readonly to: Tie;
  readonly long: Length;
}

const spansOf = (stakes: readonly Tie[]): Span[] =>
  stakes.slice(1).map((to, index) => {
    const from = entry(stakes, index);
    return { from, to, long: to.station.minus(from.station) };
  });

type Place = Omit<DepthRow, 'depths'>;

/** The stakes, and even steps between them. */
function placesAlong(
  spans: readonly Span[],
  spacing: Length | undefined,
  line: HangingLine | undefined,
): Place[] {
  const start = stakeRow(entry(spans, 0).from);
  const rest = spans.flatMap(({ from, to, long }) => {
    const count = spacing === undefined ? 1 : wholeNumberUp(long, spacing);
    const between = Array.from({ length: count - 1 }, (_, k) => {
      const along = long.times(k + 1).dividedBy(count);
      return { station: from.station.plus(along), stake: null, sag: sagAt(long, along, line) };
    });
    return [...between, stakeRow(to)];
  });
  return [start, ...rest];
}

const stakeRow = ({ id, station }: Tie): Place => ({ station, stake: id, sag: NO_LENGTH });

const sagAt = (span: Length, along: Length, line: HangingLine | undefined): Length =>
  line === undefined
    ? NO_LENGTH
    : parabolaSag(span, along, { shape: shapeLength(line), slope: ZERO });

const surfaceStep = ({ surface, below }: SurfaceBelowString, height: Length): Step =>
  derivedStep({
    title: `${surface} below the string at a stake (between stakes deduct the sag)`,
    formula: 'b = h + d',
    given: [
      given('h', 'string above finished grade', height),
      given('d', 'below finished grade', below.minus(height)),
    ],
    result: given('b', 'below the string', below),
  });

function sagSteps(
  spans: readonly Span[],
  line: HangingLine | undefined,
  maximumSag: Length,
): Step[] {
  if (line === undefined) return [];
  return [
    derivedStep({
      title: 'Largest sag, in the middle of the longest span, as a parabola',
      formula: 'f = w * max(L)^2 / (8 * H)',
      given: [
        given('w', 'weight per length', line.weightPerLength),
        given(
          'L',
          'spans from stake to stake',
          spans.map(({ long }) => long),
        ),
        given('H', 'tension', line.tension),
      ],
      result: given('f', 'largest sag', maximumSag),
    }),
  ];
}
