import {
  limitFigures,
  readingFigures,
  type KeptCheck,
  type ReadingFigure,
} from '../../checks/report-words.js';
import type { AnyQuantity } from '../../units/quantity.js';
import type { Verdict } from '../../verdict.js';
import type { DrawStyle } from '../draw-options.js';
import { actionWords } from '../frame/verdict-words.js';
import { labelName } from '../surface-rows.js';
import type { CheckedLayer } from './checked-layer.js';

/** A reading of a checked layer as it is drawn. Internal. */
export interface CheckedPoint {
  readonly verdict: Verdict;
  /** True where it is below what is allowed, or less than on the plan. */
  readonly isLow: boolean;
  /** Its size, and the limits that hold for it, as numbers of one scale; null where there is no limit. */
  readonly at: number;
  readonly minimum: number | null;
  readonly maximum: number | null;
  /** Its name, size, side and verdict. */
  readonly words: string;
  /** Where it is and what to do; each a line. */
  readonly lines: readonly string[];
}

const MOST = 60;

/** The points of a check, those nearest to a limit where there are many. Internal. */
export function checkedPoints(
  layer: CheckedLayer,
  style: DrawStyle,
): { readonly points: readonly CheckedPoint[]; readonly count: number } {
  const figures = readingFigures(layer.check, style.system);
  const margin = ({ reading }: ReadingFigure): number => sizeOf(reading.margin);
  const last = [...figures].sort((a, b) => margin(a) - margin(b))[MOST - 1];
  const most = last === undefined || figures.length <= MOST ? Infinity : margin(last);
  const shown = figures
    .map((figure, index) => ({ figure, index }))
    .filter(({ figure }) => margin(figure) <= most)
    .slice(0, MOST);
  return {
    points: shown.map(({ figure, index }) => pointOf(figure, index, { layer, style })),
    count: figures.length,
  };
}

/** A quantity as a number of its base unit. */
const sizeOf = (quantity: AnyQuantity): number => Number(quantity.si.toString());

function pointOf(
  figure: ReadingFigure,
  index: number,
  { layer, style }: { readonly layer: CheckedLayer; readonly style: DrawStyle },
): CheckedPoint {
  const { check } = layer;
  const { reading } = figure;
  const isAverage = check.check === 'thickness' && index === check.readings.length;
  const limits = isAverage ? check.averageLimits : check.limits;
  const scale = (limit: AnyQuantity | null) => (limit === null ? null : sizeOf(limit));
  const [minimum, maximum] = [scale(limits.minimum), scale(limits.maximum)];
  const at = sizeOf(reading.value);
  return {
    verdict: reading.verdict,
    isLow: minimum !== null && (maximum === null || at < (minimum + maximum) / 2),
    at,
    minimum,
    maximum,
    words: pointWords(figure, isAverage, style),
    lines: [
      ...placeLines(figure, index, { layer, style }),
      ...actionLines(figure, index, { layer, style }),
    ],
  };
}

function pointWords(
  { reading, size, side }: ReadingFigure,
  isAverage: boolean,
  { label }: DrawStyle,
): string {
  const point = isAverage ? label('checked-average') : labelName(reading.id);
  const text =
    side === null
      ? label('checked-point', { point, size })
      : label('checked-point-side', { point, size, side: label(`side-${side}`) });
  const verdict = label(`verdict-${reading.verdict}`);
  return label('checked-verdict', { reading: text, verdict });
}

interface In {
  readonly layer: CheckedLayer;
  readonly style: DrawStyle;
}

/** Where it is: below its string, or along the line. */
function placeLines({ station }: ReadingFigure, index: number, { layer, style }: In): string[] {
  const { label, units } = style;
  const stake = layer.surface?.stakes[index];
  if (stake !== undefined) {
    return [
      label('below-string', {
        string: labelName(stake.string),
        plan: units.depth(stake.plannedBelowString),
        is: units.depth(stake.measuredBelowString),
        unit: units.depthUnit,
      }),
    ];
  }
  return station === null ? [] : [label('at-station', { station })];
}

/** What to do; stone is spread loose, and low ground is never filled with soil. */
function actionLines({ reading }: ReadingFigure, index: number, { layer, style }: In): string[] {
  const { label, units } = style;
  const action = actionWords(reading, style);
  if (action === null) return [];
  const looseToAdd = layer.surface?.stakes[index]?.looseToAdd ?? null;
  if (looseToAdd === null || reading.verdict !== 'fail') return [action];
  const loose = units.depthWithUnit(looseToAdd);
  return [
    layer.surface?.kind === 'subgrade'
      ? label('fill-subgrade', { loose })
      : label('add-loose', { add: action, loose }),
  ];
}

/** The limits of a check in words. Internal. */
export function limitWords(check: KeptCheck, { label, system }: DrawStyle): string {
  const { minimum, maximum } = limitFigures(check, system);
  const limits =
    minimum === null
      ? label('limits-most', { maximum: maximum ?? '' })
      : maximum === null
        ? label('limits-least', { minimum })
        : label(check.check === 'level' ? 'limits-level' : 'limits-both', { minimum, maximum });
  return label('checked-limits', { limits });
}
