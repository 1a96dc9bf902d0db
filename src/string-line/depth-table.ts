// string-line stands on build-up: the depths below a string are the depths of a build-up, moved up
import type { BuildUp } from '../build-up/build-up.js';
import { THICKNESS_OR_NONE } from '../input/ranges.js';
import { requireBuildUp } from '../build-up/built-up.js';
import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { max } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import { ZERO } from '../units/decimal.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import {
  isSlack,
  parabolaSag,
  readString,
  shapeOf,
  SLACK,
  type HangingLine,
  type StringInput,
} from './hanging-line.js';
import {
  readLifts,
  surfacesBelow,
  type LiftsInput,
  type SurfaceBelowString,
} from './lift-surfaces.js';
import { SPAN } from './limits.js';
import { readTies, requireForward, type Tie } from './read-ties.js';

/** A stake that the string is tied to. */
export interface TieInput {
  readonly id: string;
  readonly station: LengthInput;
}

/** What to measure down at one place along the string. */
export interface DepthRow {
  readonly station: Length;
  /** The stake, or null between stakes. */
  readonly stake: string | null;
  /** How low the string hangs here. */
  readonly sag: Length;
  /** For each surface, in their order: from the string as it hangs down to the surface. */
  readonly depths: readonly Length[];
}

/** What to measure down from a string to every surface. */
export interface DepthTable extends Worked {
  /** From finished grade down, with the tops of lifts; depths below the straight from tie to tie. */
  readonly surfaces: readonly SurfaceBelowString[];
  readonly rows: readonly DepthRow[];
  /** The most that the string hangs low; nothing where no string is given. */
  readonly largestSag: Length;
  readonly cautions: readonly Caution[];
}

/** More rows than this are a slip. */
const MOST_ROWS = 2000;

/**
 * The table that a crew measures down by: from the string to finished grade, to the top of each
 * layer and each lift, as spread and as compacted, and to the subgrade, at every stake and between
 * them. With the tension and weight of the string its sag is taken off,
 * `depth = h + d - w x (L - x) / (2 H)`: between stakes the string is low. Exact.
 *
 * @param options.buildUp - from `buildUp`
 * @param options.stringHeight - string above finished grade [length], not negative, at most 5 m
 * @param options.stakes - two or more that the string is tied to, in order: each `id` once, `station`
 *   [length]
 * @param options.spacing - rows between stakes at most so far apart [length], default none between
 * @param options.lifts - layers placed in lifts: `layer` by name, `maxLift` [length, compacted],
 *   `compactedPerLoose`, 0.5 to 1
 * @param options.string - `tension` [force] and `weightPerLength` [line-weight], to take off the sag, as
 *   of a level string; default none
 * @returns surfaces and rows of depths [length, positive down], largest sag
 * @throws `TOO_FEW_STAKES`, `STATION_ORDER`, `DUPLICATE_ID`, `UNKNOWN_ID`, `DUPLICATE_LAYER`,
 *   `RATIO_OUT_OF_RANGE`, `OUT_OF_RANGE` (more than 2000 rows or 500 lifts) and the reading codes
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
export function depthTable(options: {
  readonly buildUp: BuildUp;
  readonly stringHeight: LengthInput;
  readonly stakes: readonly TieInput[];
  readonly spacing?: LengthInput;
  readonly lifts?: readonly LiftsInput[];
  readonly string?: StringInput;
}): DepthTable {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const buildUp = requireBuildUp(reader, fields['buildUp'], ['buildUp']);
  const height = reader.quantity(
    'length',
    fields['stringHeight'],
    ['stringHeight'],
    THICKNESS_OR_NONE,
  );
  const stakes = readTies(reader, fields['stakes'], () => ({}));
  requireForward(reader, stakes);
  const spacing =
    fields['spacing'] === undefined
      ? undefined
      : reader.quantity('length', fields['spacing'], ['spacing'], SPAN);
  const lifts = fields['lifts'] === undefined ? [] : readLifts(reader, fields['lifts'], buildUp);
  const line =
    fields['string'] === undefined
      ? undefined
      : readString(reader, reader.object(fields['string'], ['string']), ['string']);
  const spans = spansOf(stakes);
  checkRows(reader, spans, spacing);
  reader.finish();
  if (line !== undefined && spans.some(({ long }) => isSlack(long, line))) {
    reader.fail('OUT_OF_RANGE', ['string', 'tension'], SLACK);
    reader.finish();
  }
  const surfaces = surfacesBelow(buildUp, height, lifts);
  const rows = placesAlong(spans, spacing, line).map((place) => ({
    ...place,
    depths: surfaces.map(({ below }) => below.minus(place.sag)),
  }));
  const largestSag = max(spans.map(({ long }) => sagAt(long, long.dividedBy(2), line)));
  return withWorking(
    { surfaces, rows, largestSag, cautions: cautionsFor('utilities', 'excavation', 'trees') },
    () => showWorking(surfaces, height, largestSag),
  );
}

const NOTHING = length(0, 'm');

interface Span {
  readonly from: Tie;
  readonly to: Tie;
  readonly long: Length;
}

const spansOf = (stakes: readonly Tie[]): Span[] =>
  stakes.slice(1).map((to, index) => {
    const from = stakes[index] ?? to;
    return { from, to, long: to.station.minus(from.station) };
  });

function checkRows(reader: Reader, spans: readonly Span[], spacing: Length | undefined): void {
  if (spacing === undefined || spacing.isZero()) return;
  const rows = spans.reduce((sum, { long }) => sum + long.dividedBy(spacing).toNumber(), 0);
  if (rows <= MOST_ROWS) return;
  const message = `makes more than ${MOST_ROWS} rows: a slip of a digit or of a unit?`;
  reader.fail('OUT_OF_RANGE', ['spacing'], message);
}

type Place = Omit<DepthRow, 'depths'>;

/** The stakes, and even steps between them. */
function placesAlong(
  spans: readonly Span[],
  spacing: Length | undefined,
  line: HangingLine | undefined,
): Place[] {
  const [first] = spans;
  const start = first === undefined ? [] : [stakeRow(first.from)];
  const rest = spans.flatMap(({ from, to, long }) => {
    const count = spacing === undefined ? 1 : wholeNumberUp(long, spacing);
    const between = Array.from({ length: count - 1 }, (_, k) => {
      const along = long.times(k + 1).dividedBy(count);
      return { station: from.station.plus(along), stake: null, sag: sagAt(long, along, line) };
    });
    return [...between, stakeRow(to)];
  });
  return [...start, ...rest];
}

const stakeRow = ({ id, station }: Tie): Place => ({ station, stake: id, sag: NOTHING });

const sagAt = (span: Length, along: Length, line: HangingLine | undefined): Length =>
  line === undefined ? NOTHING : parabolaSag(span, along, { shape: shapeOf(line), slope: ZERO });

function showWorking(
  surfaces: readonly SurfaceBelowString[],
  height: Length,
  largestSag: Length,
): Step[] {
  return surfaces.map(({ surface, below }) => ({
    title: `${surface} below the string at a stake; less its sag between stakes`,
    formula: 'b = h + d',
    given: [
      given('h', 'string above finished grade', height),
      given('d', 'below finished grade', below.minus(height)),
      given('f', 'largest sag', largestSag),
    ],
    result: given('b', 'below the string', below),
    source: 'derived',
  }));
}
