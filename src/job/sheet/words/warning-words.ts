import type { WarningCode } from '../../plan/plan.js';

/** What the words of a warning are made of. Internal. */
export interface Said {
  /** What the warning is about, with a capital. */
  readonly subject: string;
  /** A figure of the warning, in the units of the sheet. */
  readonly say: (name: string) => string;
  /** How the rod fails to reach, where it does. */
  readonly reach: unknown;
  /** The rule for open digs that applies, in the units of the sheet. */
  readonly rule: string;
}

/** The move of a stake; which way to face, unless it is said for all warnings together. */
function moveWords(say: Said['say']): string {
  const move = `ove it ${say('distance')} ${say('direction')}`;
  return say('from') === '' ? `M${move}` : `Facing from ${say('from')} to ${say('to')}, m${move}`;
}

/** The words of every warning. Internal. */
export const WARNING_WORDS: Readonly<Record<WarningCode, (said: Said) => string>> = {
  PAVER_BELOW_MINIMUM: ({ subject, say }) =>
    `${subject}: paver is ${say('got')}, published minimum ${say('least')} for this use. Use a thicker paver.`,
  BEDDING_OFF_NOMINAL: ({ subject, say }) =>
    `${subject}: bedding is ${say('got')}, nominal ${say('nominal')}. Make up height with base, not with bedding.`,
  BASE_BELOW_MINIMUM: ({ subject, say }) =>
    `${subject}: base is ${say('got')}, published minimum ${say('least')} for this use. Add base.`,
  BASE_BELOW_PRACTICE: ({ subject, say }) =>
    `${subject}: base ${say('got')} meets the published minimum. With what is added for this ground the minimum is ${say('practice')}. Have the subgrade checked, or add base.`,
  STAKE_OUT_OF_LINE: ({ subject, say }) =>
    `${subject} is ${say('distance')} out of line. ${moveWords(say)}.`,
  LINE_AMBIGUOUS: ({ subject, say }) =>
    `${subject} may be out of line. ${moveWords(say)}, or make one of the other moves, not all. Then check again.`,
  LINE_NOT_CHECKED: ({ subject }) =>
    `${subject}: two stakes are always in line. Add a third to check it.`,
  FALL_TOO_SMALL: ({ subject, say }) =>
    `${subject}: fall is ${say('fall')}, minimum ${say('least')}. Lower the low end or raise the high end.`,
  FILL_NEEDED: ({ subject, say }) =>
    `${subject}: ground is ${say('fill')} below subgrade. Do not dig here. Fill in compacted lifts.`,
  OLD_PAVING_DEEPER_THAN_DIG: ({ subject, say }) =>
    `${subject}: with the old paving out, the ground is ${say('fill')} below subgrade. Fill with compacted base, not with soil.`,
  FILL_UNDER_OLD_PAVING: ({ subject, say }) =>
    `${subject}: with the old paving out, part of the ground is below subgrade: ${say('fill')} of fill. Fill in compacted lifts of stone, not with soil.`,
  STAKE_IN_DIG: ({ subject, say }) =>
    `${subject} is inside the dig of ${say('pavement')} and will be dug out. Reset it outside the dig line.`,
  STAKE_UNUSED: ({ subject }) =>
    `${subject} is on no string, and its levels are not used. Name it in a string, or remove it.`,
  OLD_PAVING_UNUSED: ({ subject }) =>
    `${subject} lies in no dig and is not stripped. Check its outline and its unit, or remove it.`,
  DIG_CLOSES_UP: ({ subject }) =>
    `${subject}: the widened dig closes a notch or an island of the paving. If a tree, post or cover stands in it, draw the dig by hand.`,
  DIG_RUNS_OUT: ({ subject, say }) =>
    `${subject}: at the sharp corner where edge ${say('edge')} starts, the dig line runs far past the paving. Cut it short when you mark out. Quantities include the full point.`,
  DIG_RULE: ({ subject, say, rule }) => `${subject}: the dig is ${say('depth')} deep. ${rule}`,
  SPOIL_TOO_NEAR: ({ subject, say }) =>
    `${subject}: spoil and gear are given ${say('distance')} from the edge of the dig, minimum ${say('least')}. Keep them back, or hold them back.`,
  SIDE_RUNS_INTO_DIG: ({ subject, say }) =>
    `${subject}: the sloped side of the dig runs into the dig of ${say('other')} over ${say('area')}. Have a competent person decide on that side before you dig.`,
  DIG_BELOW_FOOTING: ({ subject, say }) =>
    `${subject}: at edge ${say('edge')} the dig is ${say('dig')} below finished grade, the footing ${say('footing')}. Do not dig ${say('below')} below a footing. Ask a structural engineer first.`,
  FOOTING_NOT_KNOWN: ({ subject, say }) =>
    `${subject}: the dig is ${say('dig')} deep beside the building at edge ${say('edge')}, and its footing is not known. Open a test hole to find the underside of the footing before you dig.`,
  NO_FINISHED_SURFACE: ({ subject }) =>
    `${subject}: spot levels are not used, because no finished grade is known. Add fixed levels, finished levels, or finished grade at three stakes.`,
  SURFACE_GAP: ({ subject, say }) =>
    `${subject}: ${say('area')} of the dig lies outside the ${say('levels')} and is counted at the average depth of the rest. Take levels out to the dig line.`,
  LOW_GROUND: ({ subject, say }) =>
    `${subject}: over ${say('area')} the ground is below subgrade, by up to ${say('depth')} at x ${say('x')}, y ${say('y')}. Fill in compacted lifts.`,
  UTILITY_IN_DIG: ({ subject, say }) =>
    `${subject}: the tolerance zone of marked line ${say('line')} covers ${say('area')} of the dig. Hand dig there, as the law and the utility owner require.`,
  UTILITY_ABOVE_BOTTOM: ({ subject, say }) =>
    `${subject}: marked line ${say('line')}, by test hole, lies ${say('above')} above the bottom of the dig. Do not dig there. Call the utility owner.`,
  UTILITY_COVER: ({ subject, say }) =>
    `${subject}: marked line ${say('line')}, by test hole, has ${say('cover')} of cover left at the bottom of the dig, minimum ${say('least')}. Stop and call the utility owner.`,
  ROOTS_CUT: ({ subject, say }) =>
    `${subject}: the dig comes within ${say('reach')} of tree ${say('tree')} and cuts ${say('share')} of its root zone. Ask the authority and an arborist before you dig.`,
  UNIT_SHAPE: ({ subject, say }) => `${subject}: ${say('text')}`,
  GRADE_MISSES_LEVEL: ({ subject, say }) =>
    `${subject}: finished grade misses ${say('level')}, which is ${say('off')} ${say('side')} it. Check that level, or mark it as fixed.`,
  GRADE_EXTENDED: ({ subject, say }) =>
    `${subject}: finished grade is extended ${say('far')} past its levels at x ${say('x')}, y ${say('y')}, maximum ${say('farLimit')}. Take a level near there.`,
  SLOPE_TOO_STEEP: ({ subject, say }) =>
    `${subject}: slope is ${say('slope')}, published maximum ${say('most')} for ${say('purpose')}. Lower the high end or raise the low end.`,
  FALLS_TO_BUILDING: ({ subject, say }) =>
    `${subject}: water runs at the ${say('along')} along edge ${say('edge')}, by ${say('fall')} at x ${say('x')}, y ${say('y')}. Change the levels so it runs away.`,
  FALL_AWAY_TOO_SMALL: ({ subject, say }) =>
    `${subject}: fall away from the ${say('along')} along edge ${say('edge')} is ${say('fall')} at x ${say('x')}, y ${say('y')}, minimum ${say('least')}. Lower the paving away from it.`,
  PAVING_ABOVE_FLOOR: ({ subject, say }) =>
    `${subject}: along edge ${say('edge')} the paving is ${say('above')} above the level of the ${say('along')}, at x ${say('x')}, y ${say('y')}. Lower the paving, or water runs in.`,
  CROSS_SLOPE_DIFFERS: ({ subject, say }) =>
    `${subject}: cross slope is given as ${say('declared')}, but from stake ${say('stake')} to the string from ${say('from')} to ${say('to')} it is ${say('shown')}. Correct one of them.`,
  GROUND_DIFFERS: ({ subject, say }) =>
    `${subject}: ground measured from the string is ${say('off')} ${say('side')} the spot levels there. Check the reading and the spot levels before you dig.`,
  EXISTING_DIFFERS: ({ subject, say }) =>
    `${subject}: existing surface is given as ${say('declared')} ${say('declaredSide')} finished grade, but is ${say('shown')} ${say('shownSide')} it on average as measured. Check both.`,
  STRING_IN_GROUND: ({ subject, say }) =>
    `${subject}: the ground is ${say('above')} above string ${say('string')}${say('x') === '' ? '' : ` at x ${say('x')}, y ${say('y')}`}. Raise the whole string.`,
  STRING_SAGS: ({ subject, say }) =>
    `${subject}: the string sags ${say('sag')} between them, tolerance ${say('tolerance')}. Add a stake between, or pull the string tighter.`,
  STAKES_TOO_FAR_ON_CURVE: ({ subject, say }) =>
    `${subject}: between them the string is up to ${say('off')} off the curve of edge ${say('edge')}, tolerance ${say('tolerance')}. Set stakes closer.`,
  LOW_POINT: ({ subject, say }) =>
    `${subject}: finished grade falls to it from both sides, ${say('drop')} from ${say('from')} and ${say('rise')} from ${say('to')}. Change the levels, or drain it there.`,
  DENSITY_UNLIKELY: ({ subject, say }) =>
    `${subject}: ${say('what')} is ${say('got')}, usual ${say('low')} to ${say('high')}. Check the digits and the unit.`,
  RATIO_UNLIKELY: ({ subject, say }) =>
    `${subject}: ${say('what')} is ${say('got')}, usual ${say('low')} to ${say('high')}. Check the figure.`,
  LIFT_TOO_THICK: ({ subject, say }) =>
    `${subject}: lifts of up to ${say('lift')} are given, published maximum ${say('most')} for any plate or tamper. Compact it in thinner lifts.`,
  FROST_IN_SUBGRADE: ({ subject, say }) =>
    `${subject}: frost goes ${say('depth')} below finished grade, ${say('into')} into the subgrade. Frost-susceptible soil heaves there and is soft in the thaw. Drain the base, and ask a licensed engineer.`,
  FROST_NOT_SAID: ({ subject, say }) =>
    `${subject}: in the winter given, frost goes ${say('into')} into the subgrade, but the pavement is planned without frost. Its minimum base has nothing added for frost. Set "frost" to true, or correct the winter.`,
  BASE_BELOW_FROST_RULE: ({ subject, say }) =>
    `${subject}: base is ${say('got')}. The rule of limited frost penetration requires ${say('wanted')}. A licensed engineer decides.`,
  RUNOFF_OVER_INLET: ({ subject, say }) =>
    `${subject}: ${say('runoff')} runs off in the storm, but the drain takes only ${say('inlet')}. Put in a larger drain, or a second one.`,
  LIFT_BEYOND_PLANT: ({ subject, say }) =>
    `${subject}: ${say('most') === '' ? 'the published method does not permit this machine for any lift. Use' : `too thick for this machine: lift ${say('lifts')}, published maximum ${say('most')}. Use thinner lifts or`} a heavier machine.`,
  EDGE_NOT_SAID: ({ subject, say }) =>
    `${subject}: nothing is said of ${say('edges')}, planned as open. Say what lies along each edge, above all a building.`,
  EDGES_SHARED: ({ subject, say }) =>
    `${subject}: edge ${say('edge')} runs along edge ${say('otherEdge')} of ${say('other')} for ${say('run')}, and not both are given as adjoining. Give both so, or base and restraint are counted in the joint.`,
  NOTHING_ADJOINS: ({ subject, say }) =>
    `${subject}: edge ${say('edge')} is given as adjoining, but no pavement of the job lies along it. Say what lies there.`,
  ROD_CANNOT_REACH: ({ subject, say, reach }) =>
    reach === 'beyond-rod'
      ? `${subject}: the rod is too short for the ${say('surface')}. Move the instrument lower.`
      : `${subject}: the ${say('surface')} is above the line of sight. Set the instrument higher.`,
  ROD_NEEDS_FINISH: ({ subject }) =>
    `${subject}: no finished grade is known there, so there is no rod reading. Give its finished grade.`,
  LEVELS_DO_NOT_CLOSE: ({ subject, say }) =>
    `${subject}: misclosure is ${say('misclosure')}, ${say('allowable')} allowed. Find the mistake before you use its levels.`,
  INSTRUMENT_MOVED: ({ subject, say }) =>
    `${subject}: the check at the end of the day is ${say('drift')} off, ${say('tolerance')} allowed. The instrument moved or a reading is wrong. Check again everything set since the last good check.`,
};
