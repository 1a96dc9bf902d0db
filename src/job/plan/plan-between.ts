import { entry, known, lastOf } from '../../invariant.js';
import { fault, type FieldPath } from '../../errors.js';
import { depthBetweenStrings } from '../../string-line/depth-between-strings.js';
import { formatLength } from '../../units/format-length.js';
import { fromSI, type Length } from '../../units/quantity.js';
import { divideRatios } from '../../units/ratio.js';
import { between, cross, norm, type PlanPoint } from '../../units/vector.js';
import { NO_LENGTH } from '../../units/zero.js';
import { inField } from '../read/in-field.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOf } from '../schema/string-height.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { BetweenStringsPlan } from './plan.js';
import { stakesOf, type StakesById } from './stake-grounds.js';

/** More rows than a crew measures. */
const MOST_ROWS = 200;

/** The table of depths below a line from one string to another; null if the job includes none. Internal. */
export function planBetween(
  job: ReadJob,
  { betweenStrings }: Pavement,
  {
    stakes,
    total,
    path,
  }: { readonly stakes: StakesById; readonly total: Length; readonly path: FieldPath },
): BetweenStringsPlan | null {
  if (betweenStrings === undefined) return null;
  const { from, to, spacing } = betweenStrings;
  const at = [...path, 'betweenStrings'];
  const line = (id: string) =>
    known(
      job.stringLines.find((one) => one.id === id),
      'string',
    );
  const [first, second] = [line(from), line(to)];
  const { width, far } = apart(stakes, [first, second]);
  if (width.isZero()) {
    throw fault(
      'POINTS_COINCIDE',
      'the two strings meet at the first stake. Name two strings that are apart',
      {},
      [...at, 'to'],
    );
  }
  // each of the two stakes may be out of line
  if (far.minus(width).abs().compare(job.stakeTolerance.times(2)) > 0) {
    const [near, end] = [width, far].map((one) => formatLength(one, { as: 'm' }));
    const message = `the strings are not parallel: ${near} apart at the first stake of the second string, ${end} at its last. Name two parallel strings`;
    throw fault('OUT_OF_RANGE', message, {}, [...at, 'to']);
  }
  if (width.dividedBy(spacing).greaterThan(MOST_ROWS)) {
    const message = `makes more than ${MOST_ROWS} rows. Check the digits and the unit`;
    throw fault('OUT_OF_RANGE', message, {}, [...at, 'spacing']);
  }
  const [left, right] = [heightOf(job, first), heightOf(job, second)];
  const below = (distance: Length): Length =>
    inField(
      () =>
        depthBetweenStrings({
          left,
          right,
          width,
          fromLeft: distance,
          surface: 'finished grade',
          below: NO_LENGTH,
        }).straight,
      () => at,
    );
  const distances: Length[] = [];
  for (let d = NO_LENGTH; d.compare(width) < 0; d = d.plus(spacing)) distances.push(d);
  const rows = [...distances, width].map((distance) => {
    const toFinish = below(distance);
    return { distance, toFinish, toSubgrade: toFinish.plus(total) };
  });
  return { from, to, width, rows };
}

type StringLine = ReadJob['stringLines'][number];

/** Distances of the first and last stake of the second string from the line of the first string. */
function apart(stakes: StakesById, [first, second]: readonly [StringLine, StringLine]) {
  const own = stakesOf(first, stakes);
  const others = stakesOf(second, stakes);
  const ahead = between(entry(own, 0), lastOf(own));
  const away = (place: PlanPoint): Length =>
    fromSI('length', divideRatios(cross(ahead, between(entry(own, 0), place)), norm(ahead)));
  const [width, far] = [away(entry(others, 0)), away(lastOf(others))];
  return width.isNegative() ? { width: width.negated(), far: far.negated() } : { width, far };
}
