import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { fromSI, type Length } from '../units/quantity.js';
import type { LengthInput } from '../units/construct.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { checkSlope, type SlopeCheck } from './check-slope.js';
import { DISTANCE, ELEVATION, MARGIN, RISE } from './limits.js';
import { slopeBetween } from './slope-between.js';

/** How far paving stays below a sill, a slab or a damp-proof course. */
export interface Freeboard extends Worked {
  /** Sill less finish: negative where the paving stands higher. */
  readonly freeboard: Length;
  /** What the least asks for beyond the freeboard; negative where there is more than enough. */
  readonly shortfall: Length;
  /** Of the freeboard and of the fall away from the wall, the worse. */
  readonly verdict: Verdict;
  /** The fall away from the wall, where a level off the wall was given. */
  readonly fallAway?: SlopeCheck;
  readonly cautions: readonly Caution[];
}

/**
 * Freeboard at a wall: `freeboard = sill - finish at the wall`, and the fall away from the wall
 * against the least for hard surfaces at a foundation. How much freeboard is needed the caller says
 * (one guide asks for 150 mm below a damp-proof course: `DAMP_PROOF_FREEBOARD`).
 *
 * @param options.sill - elevation of the sill, slab edge or damp-proof course [length]
 * @param options.finishAtWall - elevation of the finished paving at the wall [length]
 * @param options.least - least freeboard [length]
 * @param options.away - a level off the wall: `elevation` of the finish and `distance` from the wall
 *   [length], if wanted
 * @param options.uncertainty - of a difference of two levels [length], default none
 * @returns freeboard, shortfall [length], verdict, the check of the fall away, cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source nhbc-drives
 * @source residential-code
 * @example
 * const door = freeboard({
 *   sill: '30.2 m',
 *   finishAtWall: '30.04 m',
 *   least: '150 mm',
 *   away: { elevation: '29.97 m', distance: '3.05 m' },
 * });
 * door.freeboard.to('mm').toString() //=> '160'
 * door.fallAway?.fall.to('percent').toFixed(3) //=> '2.295'
 * door.verdict //=> 'pass'
 */
export function freeboard(options: {
  readonly sill: LengthInput;
  readonly finishAtWall: LengthInput;
  readonly least: LengthInput;
  readonly away?: { readonly elevation: LengthInput; readonly distance: LengthInput };
  readonly uncertainty?: LengthInput;
}): Freeboard {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const sill = reader.quantity('length', fields['sill'], ['sill'], ELEVATION);
  const finish = reader.quantity('length', fields['finishAtWall'], ['finishAtWall'], ELEVATION);
  const least = reader.quantity('length', fields['least'], ['least'], RISE);
  const away = fields['away'] === undefined ? undefined : readAway(reader, fields['away']);
  const doubt = fields['uncertainty'] ?? NOTHING;
  const uncertainty = reader.quantity('length', doubt, ['uncertainty'], MARGIN);
  reader.finish();
  const board = sill.minus(finish);
  const fallAway =
    away === undefined
      ? undefined
      : checkSlope({
          fall: slopeBetween(finish.minus(away.elevation), away.distance),
          purpose: 'hard-surface-at-foundation',
          uncertainty: slopeBetween(uncertainty, away.distance),
        });
  const own = verdictOf(board.minus(least), uncertainty);
  const result = {
    freeboard: board,
    shortfall: least.minus(board),
    verdict: worstVerdict(fallAway === undefined ? [own] : [own, fallAway.verdict]),
    ...(fallAway === undefined ? {} : { fallAway }),
    cautions: cautionsFor('drainage'),
  };
  return withWorking(result, () => [
    {
      title: 'Freeboard at the wall',
      formula: 'F = z1 - z2',
      given: [given('z1', 'sill', sill), given('z2', 'finish at the wall', finish)],
      result: given('F', 'freeboard', board),
      source: 'derived',
    },
    ...(fallAway?.working ?? []),
  ]);
}

const NOTHING = fromSI('length', ZERO_RATIO);

function readAway(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['away']);
  const at = (name: string) => ['away', name];
  return {
    elevation: reader.quantity('length', fields['elevation'], at('elevation'), ELEVATION),
    distance: reader.quantity('length', fields['distance'], at('distance'), DISTANCE),
  };
}
