import type { StakeMove } from '../../stakes/stake-move.js';
import { isQuantity, type Area, type Length, type Slope } from '../../units/quantity.js';
import type { PlanWarning } from '../plan/plan.js';
import { slopeText, unitsOfSheet, type SheetSystem } from './units-of-sheet.js';

/**
 * The instruction for a stake that stands out of line.
 *
 * @param options.system - `us` or `metric`
 * @returns for instance `move S4 1 3/16 in right`, seen from the first stake to the last
 * @example
 * describeMove({ id: 'S4', distance: length('1 3/16 in'), direction: 'right' }, { system: 'us' })
 * //=> 'move S4 1 3/16 in right'
 */
export function describeMove(move: StakeMove, options: { readonly system: SheetSystem }): string {
  const { depthWithUnit } = unitsOfSheet(options.system);
  return `move ${move.id} ${depthWithUnit(move.distance)} ${move.direction}`;
}

/**
 * A warning of a plan in words.
 *
 * @param options.system - `us` or `metric`
 * @example
 * describeWarning(
 *   { code: 'STAKE_IN_DIG', subject: 'stake S4', values: { pavement: 'Drive' } },
 *   { system: 'us' },
 * ) //=> 'Stake S4 stands inside the dig of Drive: it will be dug out. Set it further off.'
 */
export function describeWarning(
  warning: PlanWarning,
  options: { readonly system: SheetSystem },
): string {
  const say = speaker(warning, options.system);
  const subject = warning.subject.charAt(0).toUpperCase() + warning.subject.slice(1);
  switch (warning.code) {
    case 'PAVER_BELOW_MINIMUM':
      return `${subject}: paver ${say('got')} is thinner than the published minimum of ${say('least')} for this use.`;
    case 'BEDDING_OFF_NOMINAL':
      return `${subject}: bedding ${say('got')} is not the nominal ${say('nominal')}. Bedding must not make up for base.`;
    case 'BASE_BELOW_MINIMUM':
      return `${subject}: base ${say('got')} is thinner than the published minimum of ${say('least')} for this use.`;
    case 'BASE_BELOW_PRACTICE':
      return `${subject}: base ${say('got')} meets the published minimum, but common practice on this ground is ${say('practice')}.`;
    case 'STAKE_OUT_OF_LINE':
      return `${subject} stands out of line: move it ${say('distance')} ${say('direction')}.`;
    case 'LINE_AMBIGUOUS':
      return `${subject} may be the one out of line: then move it ${say('distance')} ${say('direction')}. Make one such move, not all.`;
    case 'LINE_NOT_CHECKED':
      return `${subject}: two stakes are always in line. Add a third to check it.`;
    case 'FALL_TOO_SMALL':
      return `${subject}: falls only ${say('fall')}. Water may stand.`;
    case 'FILL_NEEDED':
      return `${subject}: the ground lies ${say('fill')} too low: fill in compacted lifts, do not dig.`;
    case 'OLD_SURFACE_DEEPER_THAN_DIG':
      return `${subject}: once the old surface is out the ground lies ${say('fill')} too low: fill with compacted base, not with soil.`;
    case 'OLD_SURFACE_WIDER_THAN_DIG':
      return `${subject}: old surface of ${say('area')} reaches beyond the dig of ${say('dig')}; spoil is counted as if it did not.`;
    case 'STAKE_IN_DIG':
      return `${subject} stands inside the dig of ${say('pavement')}: it will be dug out. Set it further off.`;
    case 'DIG_CLOSES_UP':
      return `${subject}: a notch or island of the paving closes up in the widened dig. If a tree, post or cover stands in it, draw the dig by hand.`;
    case 'DIG_RUNS_OUT':
      return `${subject}: the paving is so sharp where edge ${say('edge')} starts that the dig runs far out to a point there, and is counted so. Cut it off where you mark the dig.`;
    case 'NO_FINISHED_SURFACE':
      return `${subject}: no finished surface is known, so that the spot heights are not used. Give fixed levels, finished levels, or finished grade at three stakes or more.`;
    case 'SURFACE_GAP':
      return `${subject}: the spot heights do not reach ${say('area')} of the dig, which is counted at the mean depth of the rest. Shoot levels out to the dig line.`;
    case 'LOW_GROUND':
      return `${subject}: over ${say('area')} the ground lies below the subgrade, by up to ${say('depth')} at x ${say('x')}, y ${say('y')}: fill in compacted lifts.`;
    case 'UTILITY_IN_DIG':
      return `${subject}: the zone of line ${say('line')} reaches into the dig over ${say('area')}. Dig there by hand, as the law and its owner say.`;
    case 'UTILITY_COVER':
      return `${subject}: line ${say('line')}, found in a test hole: ${say('cover')} of ground left over it once the dig is open. Stop and ask its owner.`;
    case 'ROOTS_CUT':
      return `${subject}: the dig reaches to ${say('reach')} from tree ${say('tree')} and cuts ${say('share')} of its root zone. Ask the authority and an arborist first.`;
    case 'UNIT_SHAPE':
      return `${subject}: ${say('text')}`;
    case 'GRADE_MISSES_LEVEL':
      return `${subject}: finished grade misses ${say('level')}, which lies ${say('off')} ${say('side')} it.`;
    case 'FALLS_TO_BUILDING':
      return `${subject}: over edge ${say('edge')} water runs at the building. Change the levels.`;
    case 'ROD_CANNOT_REACH':
      return warning.values['reach'] === 'beyond-rod'
        ? `${subject}: the rod is too short for the ${say('surface')}. Move the instrument lower.`
        : `${subject}: the ${say('surface')} lies above the line of sight. Set the instrument higher.`;
    case 'ROD_NEEDS_FINISH':
      return `${subject}: no finished grade is known there, so that there is no rod reading.`;
    case 'LEVELS_DO_NOT_CLOSE':
      return `${subject} misses its known level by ${say('misclosure')}, more than the ${say('allowable')} allowed. Find the slip before you use its levels.`;
    case 'INSTRUMENT_MOVED':
      return `${subject} read again is ${say('drift')} off, more than the ${say('tolerance')} allowed. What was set since the last good check is in doubt.`;
  }
}

/** Places and reaches are said as long lengths, the rest as depths. */
const PLACES = new Set(['x', 'y', 'reach']);

function speaker(warning: PlanWarning, system: SheetSystem): (name: string) => string {
  const units = unitsOfSheet(system);
  return (name) => {
    const value = warning.values[name];
    if (!isQuantity(value)) return String(value ?? '');
    switch (value.dimension) {
      case 'length':
        return PLACES.has(name)
          ? units.long(value as Length)
          : units.depthWithUnit(value as Length);
      case 'area':
        return units.area(value as Area);
      case 'slope':
        return slopeText(value as Slope);
      default:
        return value.toString();
    }
  };
}
