import { present } from '../../../invariant.js';
import type { JobCheck } from '../../check/check-job.js';
import type { PavementCheck } from '../../check/check-pavement.js';
import { checkLines, type CheckStyle } from './check-lines.js';
import { CHECK_WORDS, nameOf, partOf, VERDICT_WORDS } from '../words/check-words.js';
import { whoDecides } from './hand-over-words.js';
import { paragraph, type SheetLine } from '../layout/sheet-lines.js';
import type { MadeCheck } from './made-checks.js';

const titleOf = ({ check, surface, place }: MadeCheck): string =>
  [nameOf(check), partOf(check.check, surface), ...(place === null ? [] : [place])].join(', ');

/** What was measured on a pavement. Internal. */
export const measuredLines = (
  name: string,
  made: readonly MadeCheck[],
  style: CheckStyle,
): SheetLine[] => [
  ...paragraph(made.length === 0 ? `${name}: nothing was measured.` : `${name}:`),
  ...made.flatMap((one) => [
    ...paragraph(`${titleOf(one)}: ${VERDICT_WORDS[one.check.verdict]}`, '- ', '  '),
    ...checkLines(one.check, style),
  ]),
];

/** What is out of tolerance, and who decides. Internal. */
export function deviationLines(made: readonly MadeCheck[]): SheetLine[] {
  const deviating = made.filter(({ check }) => check.verdict !== 'pass');
  if (deviating.length === 0) return paragraph('Nothing that was measured is out of tolerance.');
  return [
    ...deviating.flatMap((one) => deviation(one)),
    ...paragraph(
      'Make corrections while the surface is open. Where it is covered, do not open it before the person named has decided.',
    ),
    ...paragraph(
      'Who decides is common practice, no source. Your contract and the local code come first.',
    ),
  ];
}

function deviation(one: MadeCheck): SheetLine[] {
  const { pavement, check, kind, readings } = one;
  const off = readings.filter(({ action }) => action !== null);
  return [
    ...paragraph(
      `${pavement}, ${lower(titleOf(one))}: ${VERDICT_WORDS[check.verdict]}`,
      '! ',
      '  ',
    ),
    ...off.flatMap(({ id, measured, action }) =>
      paragraph(`${id}, ${measured}: ${present(action, 'action')}`, '  ', '    '),
    ),
    ...(off.length === 0 ? paragraph(check.note, '  ') : []),
    ...paragraph(`Decides: ${whoDecides(check, kind)}`, '  ', '    '),
  ];
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What nobody checked on a pavement. Internal. */
export function notCheckedLines(
  { surfaces }: JobCheck,
  { id, name, verdict, notChecked }: PavementCheck,
): SheetLine[] {
  const stakes = surfaces
    .filter(({ pavementId, missing }) => pavementId === id && missing.length > 0)
    .map(({ surface, missing }) => `Level, ${surface}: not at ${missing.join(', ')}`);
  const kinds = notChecked.map(
    ({ check, surfaces: left }) =>
      `${CHECK_WORDS[check]}: ${left.map((one) => partOf(check, one)).join(', ')}`,
  );
  const lines = verdict === null ? ['nothing was checked'] : [...stakes, ...kinds];
  if (lines.length === 0) return paragraph(`${name}: no check was left out`);
  return [...paragraph(`${name}:`), ...lines.flatMap((line) => paragraph(line, '- ', '  '))];
}
