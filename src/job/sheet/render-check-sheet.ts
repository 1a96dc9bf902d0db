import type { JobCheck } from '../check/check-job.js';
import type { PavementCheck } from '../check/check-pavement.js';
import type { PlacedCheck } from '../check/placed-check.js';
import type { SurfaceCheck } from '../check/check-surface.js';
import { describeNextStep, describeStakeAction } from './describe-check.js';
import { nameOf, partOf, readingsOf, sourcesOf, VERDICT_WORDS } from './check-words.js';
import { checkLines, sourceLines, type CheckStyle } from './check-lines.js';
import { heading, table, wrap } from './layout.js';
import { requireCheck } from '../require-plan.js';
import { readSheetOptions, type JobSheetOptions } from './sheet-options.js';
import { unitsOfSheet, type SheetSystem, type SheetUnits } from './units-of-sheet.js';

/**
 * Writes a check of the work as built as a sheet to print and to keep: plain text, surface by surface
 * from the ground up, with what to do at each stake and what comes next. Depths are rounded to 1/16 in
 * or 1 mm here, and nowhere before.
 *
 * @param check - from `checkJob`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` for what is no check, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`,
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
    ...wrap(check.name, width),
    '='.repeat(Math.min(width, check.name.length)),
    ...wrap(`As built, compared with the plan: ${VERDICT_WORDS[check.verdict]}`, width),
    ...wrap(`${units.title}. Depths straight down from the string; + is high.`, width),
    ...check.surfaces.flatMap((surface) => surfaceLines(surface, { units, system, width })),
    ...check.pavements.flatMap((pavement) => placedLines(pavement, { system, width, sources })),
    ...(sources.length === 0 ? [] : heading('WHERE THE TOLERANCES COME FROM', width)),
    ...sourceLines(sources, width),
    ...heading('BEFORE YOU GO ON', width),
    ...check.cautions.flatMap(({ text }) => wrap(text, width, '* ', '  ')),
  ];
  return `${lines.join('\n')}\n`;
}

/** The checks between the stakes of a pavement. */
const placedLines = ({ name, checks }: PavementCheck, style: CheckStyle): string[] =>
  checks.flatMap((placed) => placedCheckLines(name, placed, style));

function placedCheckLines(
  name: string,
  { place, surface, check }: PlacedCheck,
  style: CheckStyle,
): string[] {
  const { system, width } = style;
  const what = `${nameOf(check).toUpperCase()} of ${name}`;
  const off = readingsOf(check, system).filter(({ action }) => action !== null);
  return [
    ...heading(`${what}, ${partOf(check.check, surface)}, ${place}`, width),
    ...wrap(VERDICT_WORDS[check.verdict], width, '  '),
    ...checkLines(check, style),
    ...off.flatMap(({ id, measured, action }) =>
      wrap(`${id}, ${measured}: ${action ?? ''}`, width, '  > ', '    '),
    ),
    ...(check.verdict === 'pass' ? [] : wrap(check.note, width, '> ', '  ')),
  ];
}

interface SheetStyle {
  readonly units: SheetUnits;
  readonly system: SheetSystem;
  readonly width: number;
}

function surfaceLines(check: SurfaceCheck, { units, system, width }: SheetStyle): string[] {
  const { pavement, surface, kind, level, stakes, thickness } = check;
  const off = (value: (typeof stakes)[number]['value']) =>
    `${value.isNegative() || value.isZero() ? '' : '+'}${units.depth(value)}`;
  // where stakes hang on several strings, each names the one its depths count from
  const isShared = new Set(stakes.map(({ string }) => string)).size > 1;
  const rows = [
    ['stake', ...(isShared ? ['string'] : []), 'plan', 'is', 'off', ''],
    ...stakes.map((stake) => [
      stake.id,
      ...(isShared ? [stake.string] : []),
      units.depth(stake.plannedBelowString),
      units.depth(stake.measuredBelowString),
      off(stake.value),
      VERDICT_WORDS[stake.verdict],
    ]),
  ];
  const { minimum, maximum } = level.limits;
  const limits = `Within ${units.depthWithUnit(maximum)} high and ${units.depthWithUnit(minimum.abs())} low`;
  const actions = stakes.filter(({ verdict }) => verdict !== 'pass');
  const thick =
    thickness === null
      ? []
      : wrap(
          `Thickness ${units.depth(thickness.thinnest)} to ${units.depthWithUnit(thickness.thickest)}, planned ${units.depthWithUnit(thickness.design)}: ${VERDICT_WORDS[thickness.verdict]}`,
          width,
        );
  return [
    ...heading(`${surface.toUpperCase()} of ${pavement}`, width),
    ...wrap(`${limits} (${units.depthUnit})`, width),
    ...table(rows, width),
    ...thick,
    ...actions.flatMap((stake) =>
      wrap(`${stake.id}: ${describeStakeAction(stake, { kind, system })}`, width, '  > ', '    '),
    ),
    ...wrap(describeNextStep(check, { system }), width, '> ', '  '),
  ];
}
