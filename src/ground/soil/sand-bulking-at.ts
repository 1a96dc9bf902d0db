import { known } from '../../invariant.js';
import { number } from '../../input/field.js';
import { FRACTION } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { SAND_BULKING } from '../../sources/sand-bulking.js';
import { Decimal40, type Decimal } from '../../units/decimal.js';
import { given, procedureStep, withWorking, type Worked } from '../../working.js';

/** Moisture of sand. */
export interface SandBulkingAtOptions {
  /** Water over dry mass, a fraction 0 to 1. */
  readonly moisture: number | string;
}

const OPTIONS = shapeOf<SandBulkingAtOptions>()({ moisture: number(FRACTION) });

/** How much more room damp sand takes than dry sand. */
export interface SandBulkingAt extends Worked {
  /** Lower end: volume of damp sand over dry, less 1. */
  readonly minimum: number;
  /** Upper end. */
  readonly maximum: number;
  /** True past the wettest row of the table; the last row is then given. */
  readonly extrapolated: boolean;
  /** How to be sure. */
  readonly note: string;
}

const NOTE =
  'Sands differ: the table is secondary. Measure your own sand in a jar, and order sand by dry mass.';

/**
 * Bulking of damp sand at a moisture: on the line between the rows of `SAND_BULKING` that enclose it.
 * Dry sand does not bulk, and neither does sand under water. The table ends at 10 %: past it the last
 * row is given and `extrapolated` is true.
 *
 * @param options - see {@link SandBulkingAtOptions}
 * @returns minimum and maximum as fractions, whether the table ends before
 * @throws `REQUIRED`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source sand-bulking-notes
 * @example
 * sandBulkingAt({ moisture: '0.05' }).maximum //=> 0.3
 * sandBulkingAt({ moisture: 0 }).maximum //=> 0
 * sandBulkingAt({ moisture: '0.15' }).extrapolated //=> true
 */
export function sandBulkingAt(options: SandBulkingAtOptions): SandBulkingAt {
  const { moisture } = readOptions(options, OPTIONS);
  const [minimum, maximum] = [between(moisture, 'minimum'), between(moisture, 'maximum')];
  const last = SAND_BULKING.at(-1);
  const found = {
    minimum: minimum.toNumber(),
    maximum: maximum.toNumber(),
    extrapolated: last !== undefined && moisture.gt(last.moisture.value),
    note: NOTE,
  };
  return withWorking(found, () => [
    procedureStep({
      title: 'Bulking of damp sand, from the table',
      procedure: 'sandBulkingAt',
      method:
        'finds the rows of the table on either side of w and takes the point between them on a straight line',
      given: [given('w', 'moisture of dry mass', moisture)],
      result: given('b', 'bulking, upper end', maximum),
      source: 'sand-bulking-notes',
    }),
  ]);
}

function between(moisture: Decimal, end: 'minimum' | 'maximum'): Decimal {
  const above = SAND_BULKING.findIndex((row) => moisture.lte(row.moisture.value));
  const upper = known(SAND_BULKING.at(above), 'row');
  const lower = above > 0 ? SAND_BULKING[above - 1] : undefined;
  const value = new Decimal40(upper[end].value);
  if (lower === undefined) return value;
  const from = new Decimal40(lower.moisture.value);
  const share = moisture.minus(from).dividedBy(new Decimal40(upper.moisture.value).minus(from));
  return share.times(value.minus(lower[end].value)).plus(lower[end].value);
}
