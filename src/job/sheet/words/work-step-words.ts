import { capital } from '../../../capital.js';
import type { Length, Volume } from '../../../units/quantity.js';
import { roundTo } from '../../../units/rounding.js';
import {
  requireStep,
  type HoldPoint,
  type WorkAmount,
  type WorkHeight,
  type WorkHours,
  type WorkLoads,
  type WorkStep,
  type WorkStepKind,
} from '../../steps/work-step.js';
import { counted } from '../../counted.js';
import { quantityText, timeText } from './quantity-text.js';
import { usualSetOutStep } from '../sections/set-outs.js';
import { readSystem, type DescribePartOptions } from '../layout/sheet-options.js';
import { unitsOfSheet, type SheetUnits } from '../layout/units-of-sheet.js';

/**
 * A step of work in words: what must be true before it, heights, figures, what is moved or placed,
 * hours, how it is done, what is signed, and what can hurt someone. One sentence for each.
 *
 * @param step - of `workSteps`; a copy of one is none
 * @param options - see {@link DescribePartOptions}
 * @throws `WRONG_TYPE` if it is not a step, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * const [first] = workSteps(planJob(job));
 * first === undefined ? [] : describeWorkStep(first, { system: 'us' }).slice(2, 3)
 * //=> ['Sign (crew leader): All buried lines are located and marked, and the notice period is over.']
 */
export function describeWorkStep(step: WorkStep, options: DescribePartOptions): readonly string[] {
  requireStep(step);
  const units = unitsOfSheet(readSystem(options));
  const hours = hoursText(step.hours);
  return Object.freeze([
    ...step.before.map(({ note }) => `First: ${note}`),
    ...heightTexts(step, units),
    ...figureTexts(step, units).map(({ name, text }) => `${capital(name)}: ${text}.`),
    ...step.amounts.map((amount) => `${amountText(amount, units)}.`),
    ...(hours === null ? [] : [`${capital(hours)}.`]),
    ...step.notes,
    ...step.holdPoints.map(signText),
    ...step.cautions.map(({ text }) => `Caution: ${text}`),
  ]);
}

/** What is signed, and by whom. Internal. */
export const signText = ({ who, note }: HoldPoint): string => `Sign (${who}): ${note}`;

const PLACED_WORDS: Partial<Record<WorkStepKind, string>> = {
  lift: 'spread loose to',
  bedding: 'screed to',
  pavers: 'lay to',
  'compact-pavers': 'laid at',
};

/** Heights below the strings; strings of the same heights share a line. Internal. */
export function heightTexts({ kind, heights }: WorkStep, units: SheetUnits): string[] {
  const byText = new Map<string, string[]>();
  for (const height of heights) {
    const text = heightText(height, PLACED_WORDS[kind] ?? 'place to', units);
    byText.set(text, [...(byText.get(text) ?? []), height.string]);
  }
  return [...byText].map(([text, strings]) => `Below string ${strings.join(', ')}: ${text}.`);
}

function heightText({ surface, placed, finished }: WorkHeight, verb: string, units: SheetUnits) {
  const end = `${surface} ${units.depthWithUnit(finished)}`;
  return placed === null ? end : `${verb} ${units.depthWithUnit(placed)}, ${end}`;
}

/**
 * Figures as printed. Set-outs of the dig are rounded up to the step of the crew; the heights of a lift
 * say how thick it is. Internal.
 */
export function figureTexts({ kind, figures }: WorkStep, units: SheetUnits) {
  const given = figures.find(({ code }) => code === 'set-out-step')?.value as Length | undefined;
  const step = given ?? usualSetOutStep(units.isUs ? 'us' : 'metric');
  const setOut = (value: Length) =>
    `${units.depthUp(roundTo(value, step, 'up'))} ${units.depthUnit}`;
  return figures
    .filter(({ code }) => kind !== 'lift' || (code !== 'placed' && code !== 'finished'))
    .map(({ code, name, value }) => ({
      name,
      text:
        code === 'dig-line'
          ? setOut(value as Length)
          : code === 'water'
            ? units.water(value as Volume)
            : typeof value === 'number'
              ? `${value}`
              : quantityText(value, units),
    }));
}

const SOLID_WORDS = { bank: 'bank', solid: 'solid', compacted: 'compacted' } as const;

/** What is moved or placed, with its loads. Internal. */
export function amountText(amount: WorkAmount, units: SheetUnits): string {
  const { action, name, layer, state, inPlace, loose, mass, area, pieces } = amount;
  const parts = [
    ...(inPlace === null
      ? []
      : [`${units.volume(inPlace)}${state === null ? '' : ` ${SOLID_WORDS[state]}`}`]),
    ...(loose === null ? [] : [`${units.volume(loose.volume)} loose`]),
    ...(mass === null ? [] : [units.mass(mass)]),
    ...(area === null ? [] : [units.area(area)]),
    ...(pieces === null ? [] : [countText(amount, pieces)]),
    ...(amount.loads === null ? [] : [loadsText(amount.loads, action)]),
  ];
  const what = layer === null ? name : `${name} for ${layer}`;
  const verb = action === 'place' ? 'Place' : 'Haul away';
  return `${verb} ${what}: ${parts.join(', ')}`;
}

const countText = ({ kind }: WorkAmount, pieces: number): string =>
  kind === 'geotextile' ? counted(pieces, 'roll') : `${pieces}`;

function loadsText({ first, last, count, of }: WorkLoads, action: WorkAmount['action']): string {
  const which = first === last ? `load ${first}` : `loads ${first} to ${last}`;
  const isShared = count < last - first + 1;
  const shared = action === 'place' ? 'is already there' : 'is already started';
  return `${which} of ${of}${isShared ? ` (load ${first} ${shared})` : ''}`;
}

/** Hours in one line; null where there are none. Internal. */
export function hoursText(hours: WorkHours): string | null {
  const { machine, byHand, plate, trucks, trucksNeeded } = hours;
  const parts = [
    ...(machine === null ? [] : [`machine ${timeText(machine)}`]),
    ...(byHand === null ? [] : [`by hand ${timeText(byHand)}`]),
    ...(plate === null ? [] : [`plate ${timeText(plate)}`]),
    ...(trucks === null ? [] : [`trucks ${timeText(trucks)}`]),
    ...(trucksNeeded === null
      ? []
      : [`${trucksNeeded} ${trucksNeeded === 1 ? 'truck keeps' : 'trucks keep'} the loading busy`]),
  ];
  return parts.length === 0 ? null : parts.join(', ');
}
