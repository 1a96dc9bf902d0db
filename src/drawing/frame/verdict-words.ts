import { moveLength } from '../../checks/describe-check-move.js';
import type { CheckMove } from '../../checks/layer-check.js';
import { tapeOf } from '../../checks/print-amount.js';
import type { Verdict } from '../../verdict.js';
import type { DrawStyle } from '../draw-options.js';

/** The English words of verdicts and corrections, as the sheets print them. */
export const VERDICT_TEXTS = {
  'count-readings': '{count} readings',
  'count-readings-one': '1 reading',
  'verdict-pass': 'ok',
  'verdict-unclear': 'CHECK',
  'verdict-fail': 'OUT',
  'check-again': 'take more readings, then check again',
  'move-cut': 'cut {by}',
  'move-add': 'add {by}',
  'move-raise': 'raise {by}',
  'move-lower': 'lower {by}',
  'move-close': 'close up {by}',
  'move-open': 'open {by}',
  'move-move-left': 'move {by} left',
  'move-move-right': 'move {by} right',
  'move-compact': 'compact again',
  'check-pass': 'All readings are within tolerance.',
  'check-unclear': 'Too close to a limit to tell. Take more readings, then check again.',
  'check-fail': 'Out of tolerance. Make the corrections listed, then measure again.',
} as const;

/** What to do about a reading; null where it passes. Internal. */
export function actionWords(
  { verdict, move }: { readonly verdict: Verdict; readonly move: CheckMove | null },
  { label, system }: DrawStyle,
): string | null {
  if (verdict === 'unclear') return label('check-again');
  if (move === null) return null;
  const { action, by } = move;
  return label(`move-${action}`, by === null ? {} : { by: moveLength(by, tapeOf(system)) });
}
