import { COMMON_TEXTS } from '../frame/common-texts.js';
import { VERDICT_TEXTS } from '../frame/verdict-words.js';

/** The English labels of a straightedge. */
export const STRAIGHTEDGE_TEXTS = {
  ...COMMON_TEXTS,
  ...VERDICT_TEXTS,
  'flat-title': 'Flatness of the {layer}, under a straightedge of {edge}',
  'flat-limit': 'A gap of no more than {limit} is allowed under a straightedge of {edge}.',
  'flat-drawn':
    'Heights are drawn {factor} times the scale along the line. The slope from the first reading to the last is taken out.',
  'flat-worst': 'The straightedge is drawn where it shows the gaps named.',
  'flat-sparse':
    'Some positions of the straightedge have fewer than three readings under it, so this check proves nothing there.',
  'flat-overhangs': 'The readings reach less far than the straightedge is long.',
  'flat-surface': 'surface, straight from reading to reading',
  'flat-bar': 'straightedge',
  'flat-tolerance': 'lowest that is allowed under it',
  'flat-gap-line': 'gap under the straightedge',
  'flat-gap': '{reading}: {gap}',
  'flat-gap-off': '{reading}: {gap} {verdict}',
  'flat-row': '{reading} {verdict}: gap {gap} at station {station}, {action}',
  'flat-row-worst': 'Largest gap: {reading}, {gap} at station {station}.',
  'flat-more': '{count} more readings do not pass; the result lists them.',
  'flat-more-one': '1 more reading does not pass; the result lists it.',
  'flat-none': 'No gap anywhere.',
  'describe-flatness': '{readings}. {limit} {worst} {verdict}',
} as const;
