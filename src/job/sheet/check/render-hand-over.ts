import { present } from '../../../invariant.js';
import { counted } from '../../counted.js';
import { requireCheck, type JobCheck } from '../../check/check-job.js';
import type { PavementCheck } from '../../check/check-pavement.js';
import { sourceLines, type CheckStyle } from './check-lines.js';
import { sourcesOf, verdictSoFar } from '../words/check-words.js';
import { deviationLines, measuredLines, notCheckedLines } from './hand-over-checks.js';
import { CARE, careOf } from './hand-over-words.js';
import {
  entry,
  heading,
  paragraph,
  signature,
  table,
  sheetTitle,
  type SheetLine,
} from '../layout/sheet-lines.js';
import { madeChecks, type MadeCheck } from './made-checks.js';
import { SUBGRADE_WORDS, USE_WORDS } from '../sections/pavement-section.js';
import { readSheetOptions, type JobSheetOptions } from '../layout/sheet-options.js';
import { sheetText } from '../layout/sheet-text.js';
import { unitsOfSheet } from '../layout/units-of-sheet.js';

/**
 * Writes the sheet that is handed over with the finished work: plain text. It says what was built, what
 * was measured and against which tolerance, what deviates and who decides about it, what was not
 * checked, and how to care for the surface. Who decides, and the care, are common practice without a
 * source, and the sheet marks them so. Lengths are rounded to 1/16 in or 1 mm here, finer where a
 * reading out of tolerance would else look as if it passed.
 *
 * @param check - from `checkJob`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` if it is not a check, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`,
 *   `UNKNOWN_FIELD`
 * @example
 * const check = checkJob(planJob(job), {
 *   lippage: [
 *     {
 *       pavement: 'terrace',
 *       place: 'at the steps',
 *       at: 'pavers',
 *       readings: [{ id: 'third row', lippage: '3/16 in' }],
 *       tolerance: 'paver-guide-in',
 *     },
 *   ],
 * });
 * const sheet = renderHandOver(check, { system: 'us' });
 * sheet.includes('third row, 3/16 in') //=> true
 * sheet.includes('Decides: the owner') //=> true
 */
export function renderHandOver(check: JobCheck, options: JobSheetOptions): string {
  requireCheck(check);
  const { system, width } = readSheetOptions(options);
  const made = check.pavements.map((pavement) => madeChecks(check, pavement, system));
  const all = made.flat();
  const sources = sourcesOf(all.map((one) => one.check));
  const style = { system, sources };
  const lines = [
    ...opening(check, all, style),
    ...heading('WHAT WAS BUILT, AS PLANNED'),
    ...check.pavements.flatMap((pavement) => builtLines(pavement, style)),
    ...heading('WHAT WAS MEASURED'),
    ...check.pavements.flatMap(({ name }, index) =>
      measuredLines(name, present(made[index], 'pavement'), style),
    ),
    ...sourceLines(sources),
    ...heading('WHAT DEVIATES'),
    ...deviationLines(all),
    ...heading('WHAT WAS NOT CHECKED'),
    ...check.pavements.flatMap((pavement) => notCheckedLines(check, pavement)),
    ...careLines(check),
    ...heading('CAUTIONS'),
    ...check.cautions.flatMap(({ text }) => paragraph(text, '* ', '  ')),
    ...signLines(),
  ];
  return sheetText(lines, width);
}

function opening(check: JobCheck, made: readonly MadeCheck[], { system }: CheckStyle): SheetLine[] {
  const deviating = made.filter((one) => one.check.verdict !== 'pass').length;
  const count =
    deviating === 0
      ? ''
      : `, ${deviating} of ${counted(made.length, 'check')} ${deviating === 1 ? 'deviates' : 'deviate'}`;
  const { title, tapeStep } = unitsOfSheet(system);
  return [
    ...sheetTitle(check.name),
    ...paragraph(`Hand-over. All checks: ${verdictSoFar(check)}${count}`),
    ...paragraph(
      `${title}, rounded to ${tapeStep}: figures need not add up to the last mark. ok: within tolerance where it was measured. OUT: out of tolerance. CHECK: too close to the limit to tell.`,
    ),
  ];
}

function builtLines(
  { name, use, subgrade, buildUp, area }: PavementCheck,
  { system }: CheckStyle,
): SheetLine[] {
  const units = unitsOfSheet(system);
  const rows = buildUp.layers.map((layer) => [
    layer.material === null || layer.material === layer.name
      ? layer.name
      : `${layer.name}, ${layer.material}`,
    units.depth(layer.thickness),
  ]);
  return [
    ...paragraph(`${name}. ${USE_WORDS[use]}, ${SUBGRADE_WORDS[subgrade]}`),
    ...paragraph(`Thickness of layers, compacted (${units.depthUnit})`),
    ...table(rows),
    ...entry('all layers', units.depth(buildUp.total)),
    ...entry('area of paving', units.area(area)),
  ];
}

const careLines = ({ pavements }: JobCheck): SheetLine[] => [
  ...heading('CARE OF THE SURFACE'),
  ...[...pavements.map(careOf), ...CARE].flatMap((text) => paragraph(text, '- ', '  ')),
  ...paragraph('Common practice, no source. Follow the makers of pavers and sand first.'),
];

const signLines = (): SheetLine[] => [
  ...heading('SIGNED'),
  ...paragraph('A signature says that this sheet was read. It does not approve any deviation.'),
  ...signature('For the crew'),
  ...signature('For the owner'),
];
