import { COMMON_TEXTS } from '../frame/common-texts.js';

/** The English labels of a row of stakes. */
export const ROW_TEXTS = {
  ...COMMON_TEXTS,
  'row-title': 'Stakes of string {string}, seen from above',
  'row-title-plain': 'A row of stakes, seen from above',
  'row-facing': 'Facing from {first} to {last}: left is up, right is down.',
  'row-scaled': 'Offsets are drawn {factor} times the scale along the row.',
  'row-same-scale': 'Offsets are drawn at the scale along the row.',
  'row-by-ends': 'Checked against the line from {first} to {last}.',
  'row-by-fit': 'Checked against the best line.',
  'row-within': 'In line within {tolerance}.',
  'row-line': 'line that the stakes are checked against',
  'row-tolerance': 'tolerance',
  'row-move': 'move to make',
  'row-alternative': 'move to make: one of them, not all',
  'row-left': 'left',
  'row-right': 'right',
  'row-off': '{offset} {side}',
  'row-on': 'on the line',
  'row-entry': '{stake} at {station}: {off}',
  'row-entry-out': '{stake} at {station}: {off} OUT',
  'row-in-line': 'All stakes are in tolerance.',
  'row-out-of-line': 'Move the stakes listed.',
  'row-ambiguous':
    'There is no way to tell which stake is off. Make one of the moves listed, not all, or add a stake. Then check again.',
  'row-always-in-line': 'Two stakes are always in line. Add a third to check them.',
  'row-move-words': 'facing from {first} to {last}, move {stake} {distance} {side}',
  'describe-row': 'Stakes {stakes}. {note} {moves}',
} as const;
