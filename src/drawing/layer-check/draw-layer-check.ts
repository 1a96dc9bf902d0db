import { countLabel } from '../draw-label.js';
import type { AnyLayerCheck } from '../../checks/report-words.js';
import type { SurfaceCheck } from '../../job/check/check-surface.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { ALLOWED_RULES } from '../frame/rules.js';
import type { LegendEntry } from '../frame/legend.js';
import { textLines } from '../frame/text-lines.js';
import { labelName } from '../surface-rows.js';
import { checkedLayer, type CheckedLayer } from './checked-layer.js';
import { checkedPoints, limitWords, type CheckedPoint } from './checked-points.js';
import { LAYER_CHECK_TEXTS } from './layer-check-texts.js';
import { pointMark, pointRow, rowScale } from './point-rows.js';

/** How a checked layer is drawn. */
export type DrawLayerCheckOptions = DrawOptions;

/**
 * Draws a layer as built against its tolerance: a row for each reading, with its place on a line that
 * shows what is allowed, the size in figures, high or low in words, and what to do. Shapes tell the
 * verdicts apart, not colours. Of more than 60 readings those nearest to a limit are drawn.
 *
 * @param check - the result of a check of `settline/checks`, or a surface of `checkJob`; not changed
 * @param options - see {@link DrawLayerCheckOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const { surfaces } = checkJob(planJob(job), {
 *   readings: [
 *     { stake: 'K1', surface: 'subgrade', belowString: '36 3/4 in' },
 *     { stake: 'K2', surface: 'subgrade', belowString: '35 7/8 in' },
 *   ],
 *   tolerances: { subgrade: { over: '0 in', under: '3/4 in' } },
 * });
 * const [subgrade] = surfaces;
 * const svg = subgrade === undefined ? '' : drawLayerCheck(subgrade, { system: 'us' });
 * svg.includes('K2: 7/8 in high OUT') //=> true
 */
export function drawLayerCheck(
  check: AnyLayerCheck | SurfaceCheck,
  options: DrawLayerCheckOptions,
): string {
  const layer = checkedLayer(check);
  const style = readStyle(options, LAYER_CHECK_TEXTS);
  const { points, count } = checkedPoints(layer, style);
  return frameDrawing(
    {
      kind: 'layer-check',
      rules: ALLOWED_RULES,
      title: titleWords(layer, style),
      notes: notes(layer, points.length < count ? { shown: points.length, count } : null, style),
      description: style.label('describe-checked', {
        readings: countLabel(style.label, 'count-readings', count),
        limits: limitWords(layer.check, style),
        verdict: style.label(`check-${layer.verdict}`),
        off: offWords(points),
      }),
      legend: legend(points, style),
      draw: (top) => drawPicture(layer, points, { top, style }),
    },
    style,
  );
}

function titleWords({ check, surface, subject }: CheckedLayer, { label }: DrawStyle): string {
  return surface === null
    ? label('checked-title', { what: label(`kind-${check.check}`), layer: labelName(subject) })
    : label('checked-surface-title', {
        surface: labelName(surface.surface),
        pavement: labelName(surface.pavement),
      });
}

function notes(
  { check }: CheckedLayer,
  few: { readonly shown: number; readonly count: number } | null,
  style: DrawStyle,
): string[] {
  const { label } = style;
  const way = label(check.check === 'level' ? 'scale-high' : 'scale-more');
  return [
    limitWords(check, style),
    `${label('checked-scale')} ${way}`,
    ...(few === null
      ? []
      : [label('checked-worst', { shown: `${few.shown}`, count: `${few.count}` })]),
  ];
}

/** The readings that do not pass, for the description. */
const offWords = (points: readonly CheckedPoint[]): string =>
  points
    .filter(({ verdict }) => verdict !== 'pass')
    .map(({ words, lines }) => [words, ...lines.slice(-1)].join(', '))
    .join('; ');

function drawPicture(
  layer: CheckedLayer,
  points: readonly CheckedPoint[],
  { top, style }: { readonly top: number; readonly style: DrawStyle },
): Picture {
  const scale = rowScale(points, style);
  const zero = layer.check.check === 'level' ? 0 : null;
  const marks: string[] = [];
  let y = top;
  for (const point of points) {
    const row = pointRow(point, y, { scale, zero, style });
    marks.push(...row.marks);
    y = row.bottom;
  }
  const told = textLines(
    [style.label(`check-${layer.verdict}`), ...tailWords(layer, style)],
    y + 6,
    style,
  );
  return { marks: [...marks, ...told.marks], bottom: told.bottom };
}

/** Of a surface: the thickness under it, and the stakes that nobody read. */
function tailWords({ surface }: CheckedLayer, { label, units }: DrawStyle): string[] {
  if (surface === null) return [];
  const { thickness, missing } = surface;
  const thick =
    thickness === null
      ? []
      : [
          label('layer-thickness', {
            thinnest: units.depth(thickness.thinnest),
            thickest: units.depthWithUnit(thickness.thickest),
            design: units.depthWithUnit(thickness.design),
            verdict: label(`verdict-${thickness.verdict}`),
          }),
        ];
  const left = missing.map((id) => labelName(id)).join(', ');
  return [...thick, ...(missing.length === 0 ? [] : [label('not-read', { stakes: left })])];
}

function legend(points: readonly CheckedPoint[], { label }: DrawStyle): LegendEntry[] {
  const mark = (verdict: CheckedPoint['verdict'], isLow = false): LegendEntry['sample'] => ({
    mark: (at) => pointMark({ verdict, isLow }, at),
    of: verdict === 'fail' ? 'solid' : 'stake',
  });
  const has = (test: (point: CheckedPoint) => boolean, entry: LegendEntry): LegendEntry[] =>
    points.some(test) ? [entry] : [];
  return [
    { sample: { line: 'allowed' }, text: label('mark-allowed') },
    ...has(({ verdict }) => verdict === 'pass', { sample: mark('pass'), text: label('mark-pass') }),
    ...has(({ verdict }) => verdict === 'unclear', {
      sample: mark('unclear'),
      text: label('mark-unclear'),
    }),
    ...has(({ verdict, isLow }) => verdict === 'fail' && !isLow, {
      sample: mark('fail'),
      text: label('mark-high'),
    }),
    ...has(({ verdict, isLow }) => verdict === 'fail' && isLow, {
      sample: mark('fail', true),
      text: label('mark-low'),
    }),
  ];
}
