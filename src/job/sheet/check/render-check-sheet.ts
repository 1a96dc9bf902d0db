import { present } from '../../../invariant.js';
import { requireCheck, type JobCheck } from '../../check/check-job.js';
import type { PavementCheck } from '../../check/check-pavement.js';
import type { PlacedCheck } from '../../check/placed-check.js';
import type { SurfaceCheck } from '../../check/check-surface.js';
import { describeNextStep, describeStakeAction } from '../words/describe-check.js';
import {
  nameOf,
  partOf,
  readingsOf,
  sourcesOf,
  VERDICT_WORDS,
  verdictSoFar,
} from '../words/check-words.js';
import { checkLines, sourceLines, type CheckStyle } from './check-lines.js';
import { heading, paragraph, table, sheetTitle, type SheetLine } from '../layout/sheet-lines.js';
import { sheetText } from '../layout/sheet-text.js';
import { readSheetOptions, type JobSheetOptions } from '../layout/sheet-options.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';
import { unitsOfSheet, type SheetUnits } from '../layout/units-of-sheet.js';

/**
 * Writes a check of the work as built as a sheet to print and to keep: plain text, surface by surface
 * from the ground up, with what to do at each stake and what comes next. Depths are rounded to 1/16 in
 * or 1 mm here, and nowhere before.
 *
 * @param check - from `checkJob`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` if it is not a check, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`,
 *   `UNKNOWN_FIELD`
 * @example
 * const check = checkJob(planJob(job), {
 *   readings: [{ stake: 'K1', surface: 'subgrade', belowString: '35 7/8 in' }],
 *   tolerances: { subgrade: { over: '0 in', under: '3/4 in' } },
 * });
 * renderCheckSheet(check, { system: 'us' }).includes('cut 7/8 in and compact') //=> true
 */
export function renderCheckSheet(check: JobCheck, options: JobSheetOptions): string {
  requireCheck(check);
  const { system, width } = readSheetOptions(options);
  const units = unitsOfSheet(system);
  const sources = sourcesOf(
    check.pavements.flatMap(({ checks }) => checks.map((one) => one.check)),
  );
  const lines = [
    ...sheetTitle(check.name),
    ...paragraph(`As built, compared with the plan: ${verdictSoFar(check)}`),
    ...paragraph(`${units.title}. Depths straight down from the string; + is high.`),
    ...check.surfaces.flatMap((surface) => surfaceLines(surface, { units, system })),
    ...check.pavements.flatMap((pavement) => placedLines(pavement, { system, sources })),
    ...(sources.length === 0 ? [] : heading('WHERE THE TOLERANCES COME FROM')),
    ...sourceLines(sources),
    ...heading('BEFORE YOU GO ON'),
    ...check.cautions.flatMap(({ text }) => paragraph(text, '* ', '  ')),
  ];
  return sheetText(lines, width);
}

/** The checks between the stakes of a pavement. */
const placedLines = ({ name, checks }: PavementCheck, style: CheckStyle): SheetLine[] =>
  checks.flatMap((placed) => placedCheckLines(name, placed, style));

function placedCheckLines(
  name: string,
  { place, surface, check }: PlacedCheck,
  style: CheckStyle,
): SheetLine[] {
  const { system } = style;
  const what = `${nameOf(check).toUpperCase()} of ${name}`;
  const off = readingsOf(check, system).filter(({ action }) => action !== null);
  return [
    ...heading(`${what}, ${partOf(check.check, surface)}, ${place}`),
    ...paragraph(VERDICT_WORDS[check.verdict], '  '),
    ...checkLines(check, style),
    ...off.flatMap(({ id, measured, action }) =>
      paragraph(`${id}, ${measured}: ${present(action, 'action')}`, '  > ', '    '),
    ),
    ...(check.verdict === 'pass' ? [] : paragraph(check.note, '> ', '  ')),
  ];
}

interface SheetStyle {
  readonly units: SheetUnits;
  readonly system: SheetSystem;
}

function surfaceLines(check: SurfaceCheck, { units, system }: SheetStyle): SheetLine[] {
  const { pavement, surface, kind, level, stakes, thickness } = check;
  const off = (value: (typeof stakes)[number]['value']) =>
    `${value.isNegative() || value.isZero() ? '' : '+'}${units.depth(value)}`;
  // where stakes hang on several strings, each names the one its depths count from
  const isShared = new Set(stakes.map(({ string }) => string)).size > 1;
  const head = ['stake', ...(isShared ? ['string'] : []), 'plan', 'is', 'off', ''];
  const rows = stakes.map((stake) => [
    stake.id,
    ...(isShared ? [stake.string] : []),
    units.depth(stake.plannedBelowString),
    units.depth(stake.measuredBelowString),
    off(stake.value),
    VERDICT_WORDS[stake.verdict],
  ]);
  const { minimum, maximum } = level.limits;
  const limits = `Within ${units.depthWithUnit(maximum)} high and ${units.depthWithUnit(minimum.abs())} low`;
  const actions = stakes.filter(({ verdict }) => verdict !== 'pass');
  const thick =
    thickness === null
      ? []
      : paragraph(
          `Thickness ${units.depth(thickness.thinnest)} to ${units.depthWithUnit(thickness.thickest)}, planned ${units.depthWithUnit(thickness.design)}: ${VERDICT_WORDS[thickness.verdict]}`,
        );
  return [
    ...heading(`${surface.toUpperCase()} of ${pavement}`),
    ...paragraph(`${limits} (${units.depthUnit})`),
    ...table(rows, head),
    ...thick,
    ...actions.flatMap((stake) =>
      paragraph(`${stake.id}: ${describeStakeAction(stake, { kind, system })}`, '  > ', '    '),
    ),
    ...paragraph(describeNextStep(check, { system }), '> ', '  '),
  ];
}
