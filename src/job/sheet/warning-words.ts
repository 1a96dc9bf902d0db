import type { WarningCode } from '../plan/plan.js';

/** What the words of a warning are made of. Internal. */
export interface Said {
  /** What the warning is about, with a capital. */
  readonly subject: string;
  /** A figure of the warning, in the units of the sheet. */
  readonly say: (name: string) => string;
  /** How the rod fails to reach, where it does. */
  readonly reach: unknown;
}

/** The words of every warning. Internal. */
export const WARNING_WORDS: Readonly<Record<WarningCode, (said: Said) => string>> = {
  PAVER_BELOW_MINIMUM: ({ subject, say }) =>
    `${subject}: paver ${say('got')} is thinner than the published minimum of ${say('least')} for this use.`,
  BEDDING_OFF_NOMINAL: ({ subject, say }) =>
    `${subject}: bedding ${say('got')} is not the nominal ${say('nominal')}. Bedding must not make up for base.`,
  BASE_BELOW_MINIMUM: ({ subject, say }) =>
    `${subject}: base ${say('got')} is thinner than the published minimum of ${say('least')} for this use.`,
  BASE_BELOW_PRACTICE: ({ subject, say }) =>
    `${subject}: base ${say('got')} meets the published minimum, but common practice on this ground is ${say('practice')}.`,
  STAKE_OUT_OF_LINE: ({ subject, say }) =>
    `${subject} stands out of line: move it ${say('distance')} ${say('direction')}.`,
  LINE_AMBIGUOUS: ({ subject, say }) =>
    `${subject} may be the one out of line: then move it ${say('distance')} ${say('direction')}. Make one such move, not all.`,
  LINE_NOT_CHECKED: ({ subject }) =>
    `${subject}: two stakes are always in line. Add a third to check it.`,
  FALL_TOO_SMALL: ({ subject, say }) => `${subject}: falls only ${say('fall')}. Water may stand.`,
  FILL_NEEDED: ({ subject, say }) =>
    `${subject}: the ground lies ${say('fill')} too low: fill in compacted lifts, do not dig.`,
  OLD_SURFACE_DEEPER_THAN_DIG: ({ subject, say }) =>
    `${subject}: once the old surface is out the ground lies ${say('fill')} too low: fill with compacted base, not with soil.`,
  OLD_SURFACE_WIDER_THAN_DIG: ({ subject, say }) =>
    `${subject}: old surface of ${say('area')} reaches beyond the dig of ${say('dig')}; spoil is counted as if it did not.`,
  STAKE_IN_DIG: ({ subject, say }) =>
    `${subject} stands inside the dig of ${say('pavement')}: it will be dug out. Set it further off.`,
  DIG_CLOSES_UP: ({ subject }) =>
    `${subject}: a notch or island of the paving closes up in the widened dig. If a tree, post or cover stands in it, draw the dig by hand.`,
  DIG_RUNS_OUT: ({ subject, say }) =>
    `${subject}: the paving is so sharp where edge ${say('edge')} starts that the dig runs far out to a point there, and is counted so. Cut it off where you mark the dig.`,
  NO_FINISHED_SURFACE: ({ subject }) =>
    `${subject}: no finished surface is known, so that the spot heights are not used. Give fixed levels, finished levels, or finished grade at three stakes or more.`,
  SURFACE_GAP: ({ subject, say }) =>
    `${subject}: the spot heights do not reach ${say('area')} of the dig, which is counted at the mean depth of the rest. Shoot levels out to the dig line.`,
  LOW_GROUND: ({ subject, say }) =>
    `${subject}: over ${say('area')} the ground lies below the subgrade, by up to ${say('depth')} at x ${say('x')}, y ${say('y')}: fill in compacted lifts.`,
  UTILITY_IN_DIG: ({ subject, say }) =>
    `${subject}: the zone of line ${say('line')} reaches into the dig over ${say('area')}. Dig there by hand, as the law and its owner say.`,
  UTILITY_COVER: ({ subject, say }) =>
    `${subject}: line ${say('line')}, found in a test hole: ${say('cover')} of ground left over it once the dig is open. Stop and ask its owner.`,
  ROOTS_CUT: ({ subject, say }) =>
    `${subject}: the dig reaches to ${say('reach')} from tree ${say('tree')} and cuts ${say('share')} of its root zone. Ask the authority and an arborist first.`,
  UNIT_SHAPE: ({ subject, say }) => `${subject}: ${say('text')}`,
  GRADE_MISSES_LEVEL: ({ subject, say }) =>
    `${subject}: finished grade misses ${say('level')}, which lies ${say('off')} ${say('side')} it.`,
  FALLS_TO_BUILDING: ({ subject, say }) =>
    `${subject}: over edge ${say('edge')} water runs at the building. Change the levels.`,
  ROD_CANNOT_REACH: ({ subject, say, reach }) =>
    reach === 'beyond-rod'
      ? `${subject}: the rod is too short for the ${say('surface')}. Move the instrument lower.`
      : `${subject}: the ${say('surface')} lies above the line of sight. Set the instrument higher.`,
  ROD_NEEDS_FINISH: ({ subject }) =>
    `${subject}: no finished grade is known there, so that there is no rod reading.`,
  LEVELS_DO_NOT_CLOSE: ({ subject, say }) =>
    `${subject} misses its known level by ${say('misclosure')}, more than the ${say('allowable')} allowed. Find the slip before you use its levels.`,
  INSTRUMENT_MOVED: ({ subject, say }) =>
    `${subject} read again is ${say('drift')} off, more than the ${say('tolerance')} allowed. What was set since the last good check is in doubt.`,
};
