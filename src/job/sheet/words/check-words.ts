import { capital } from '../../../capital.js';
import type { CheckKind } from '../../../checks/layer-check.js';
import { describeCheckMove } from '../../../checks/describe-check-move.js';
import { tapeOf } from '../../../checks/print-amount.js';
import { limitsOf, readingTexts, type KeptCheck } from '../../../checks/report-words.js';
import type { ToleranceOrigin } from '../../../checks/tolerance.js';
import type { SourceId } from '../../../sources/catalogue.js';
import { exactOf } from '../../../units/quantity.js';
import { compareRatios } from '../../../units/ratio.js';
import type { Verdict } from '../../../verdict.js';
import type { JobCheck } from '../../check/check-job.js';
import { counted } from '../../counted.js';
import { AGAIN } from './describe-check.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';

/** A verdict on every sheet of what was built. Internal. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  pass: 'ok',
  unclear: 'CHECK',
  fail: 'OUT',
};

/** Each kind of check on a sheet. Internal. */
export const CHECK_WORDS: Readonly<Record<CheckKind, string>> = {
  level: 'Level',
  thickness: 'Thickness',
  flatness: 'Flatness',
  lippage: 'Lippage',
  'joint-width': 'Joint width',
  'bond-line': 'Bond line',
  fall: 'Fall',
  compaction: 'Compaction',
};

/** What a check is of: thickness and compaction are of a layer, the rest of its surface. Internal. */
export const partOf = (check: CheckKind, surface: string): string =>
  check === 'thickness' || check === 'compaction' ? surface.replace(/ top$/, '') : surface;

/** What a check is called on a sheet; lips are between pavers or at a drain. Internal. */
export const nameOf = (check: SheetCheck): string =>
  check.check === 'lippage' ? capital(check.subject) : CHECK_WORDS[check.check];

/** A check as sheets print it. Internal. */
export type SheetCheck = KeptCheck &
  ToleranceOrigin & { readonly verdict: Verdict; readonly note: string };

/** A reading in words, and what to do about it. Internal. */
export interface SheetReading {
  readonly id: string;
  readonly verdict: Verdict;
  readonly measured: string;
  /** Null where it passes. */
  readonly action: string | null;
}

/** The readings of a check, an average thickness last. Internal. */
export const readingsOf = (check: SheetCheck, system: SheetSystem): readonly SheetReading[] =>
  readingTexts(check, system).map(({ reading: { id, verdict, move }, measured }) => ({
    id,
    verdict,
    measured,
    action: ACTIONS[verdict](() => describeCheckMove(move, tapeOf(system))),
  }));

const ACTIONS: Readonly<Record<Verdict, (move: () => string) => string | null>> = {
  pass: () => null,
  unclear: () => AGAIN,
  fail: (move) => move(),
};

/** The reading with the smallest margin. Internal. */
export function worstOf(check: SheetCheck, system: SheetSystem): string {
  const texts = readingTexts(check, system);
  const [first, ...rest] = texts;
  if (first === undefined) return '';
  const margin = (one: typeof first) => exactOf(one.reading.margin);
  const { reading, measured } = rest.reduce(
    (worst, one) => (compareRatios(margin(one), margin(worst)) < 0 ? one : worst),
    first,
  );
  return `${reading.id}, ${measured}`;
}

/** How many readings, and how many of them do not pass. Internal. */
export function countOf({ readings }: Pick<SheetCheck, 'readings'>): string {
  const all: readonly { readonly verdict: Verdict }[] = readings;
  const count = (wanted: Verdict) => all.filter(({ verdict }) => verdict === wanted).length;
  const parts = [
    counted(all.length, 'reading'),
    ...(count('fail') > 0 ? [`${count('fail')} out of tolerance`] : []),
    ...(count('unclear') > 0 ? [`${count('unclear')} too close to tell`] : []),
  ];
  return parts.join(', ');
}

/** The publications whose tolerances were used, each once. Internal. */
export const sourcesOf = (checks: readonly ToleranceOrigin[]): readonly SourceId[] => [
  ...new Set(checks.flatMap(({ source }) => source ?? [])),
];

/** The tolerance of a check, and the number of its publication on the sheet. Internal. */
export function toleranceOf(
  check: SheetCheck,
  { system, sources }: { readonly system: SheetSystem; readonly sources: readonly SourceId[] },
): string {
  const { source } = check;
  const from = source === null ? ', set for this job' : ` [${sources.indexOf(source) + 1}]`;
  return `${limitsOf(check, system)}${from}`;
}

/** The verdict in words; what was read may be ok while something is left to check. Internal. */
export function verdictSoFar({ verdict, surfaces, pavements }: JobCheck): string {
  const isWhole =
    surfaces.every(({ missing }) => missing.length === 0) &&
    pavements.every(({ notChecked }) => notChecked.length === 0);
  return verdict === 'pass' && !isWhole
    ? 'ok so far. Not everything has been checked.'
    : VERDICT_WORDS[verdict];
}
