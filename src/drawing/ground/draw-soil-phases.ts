import { fault } from '../../errors.js';
import type { SoilPhases } from '../../ground/soil/soil-phases.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { entry } from '../../invariant.js';
import { percentText } from '../../job/sheet/words/in-words.js';
import { formatQuantity } from '../../units/format-quantity.js';
import { isQuantity, type Density } from '../../units/quantity.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { dimensionLine } from '../frame/dimension.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { grainRules, STONE } from '../frame/grain-hatches.js';
import { hatched } from '../frame/hatches.js';
import { linesAcross } from '../frame/lines-across.js';

import { spreadRows } from '../frame/spread-rows.js';
import { textMark } from '../frame/text-label.js';
import { textLines } from '../frame/text-lines.js';
import { cornersOfBox, line, polylines, rectangle } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';
import { GROUND_TEXTS } from './ground-texts.js';

/** How the phases of a soil are drawn. */
export type DrawSoilPhasesOptions = DrawOptions;

/**
 * Draws what a soil is made of as a block: air, water and solids one over the other, each as high as its
 * share of the volume, with that share on the left and its mass for each unit of volume on the right.
 * Below stand the ratios and the densities.
 *
 * @param soil - the result of `soilPhases`; not changed
 * @param options - see {@link DrawSoilPhasesOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const soil = soilPhases({ dryDensity: '2000 kg/m3', moisture: 0.05, specificGravity: 2.5 });
 * const svg = drawSoilPhases(soil, { system: 'metric' });
 * svg.includes('>solids</text>') //=> true
 * svg.includes('>80.0%</text>') //=> true
 */
export function drawSoilPhases(soil: SoilPhases, options: DrawSoilPhasesOptions): string {
  requirePhases(soil);
  const style = readStyle(options, GROUND_TEXTS);
  const { label } = style;
  const phases = phasesOf(soil, style);
  const told = toldOf(soil, style);
  return frameDrawing(
    {
      kind: 'phases',
      rules: grainRules([STONE]),
      title: label('phases-title'),
      notes: [label('phases-note')],
      description: [
        label('describe-phases', {
          shares: phases.map(({ name, volume }) => `${volume} ${name}`).join(', '),
        }),
        ...told,
      ].join(' '),
      legend: [],
      draw: (top) => drawBlock(phases, { soil, told, top, style }),
    },
    style,
  );
}

interface Phase {
  readonly name: string;
  readonly fill: 'air' | 'water' | 'stone';
  /** Share of the volume. */
  readonly share: number;
  readonly volume: string;
  readonly mass: string;
}

const densityText = (of: Density, { system }: DrawStyle): string =>
  system === 'us'
    ? formatQuantity(of, { as: 'lb/ft3', places: 1 })
    : formatQuantity(of, { as: 'kg/m3', places: 0 });

/** From the top down: air, water, solids. */
function phasesOf(soil: SoilPhases, style: DrawStyle): Phase[] {
  const { label } = style;
  const { porosity, saturation, airVoids, dryDensity, wetDensity } = soil;
  const water = wetDensity.minus(dryDensity);
  const phase = (key: 'air' | 'water' | 'solids', share: number, mass: Density): Phase => ({
    name: label(`phases-${key}`),
    fill: key === 'solids' ? 'stone' : key,
    share,
    volume: percentText(share),
    mass: densityText(mass, style),
  });
  return [
    phase('air', airVoids, water.minus(water)),
    phase('water', porosity * saturation, water),
    phase('solids', 1 - porosity, dryDensity),
  ];
}

/** Ratios and densities in words. */
function toldOf(soil: SoilPhases, style: DrawStyle): string[] {
  const { label } = style;
  const { voidRatio, porosity, saturation, moisture } = soil;
  return [
    label('phases-ratios', {
      e: voidRatio.toFixed(3),
      n: porosity.toFixed(3),
      s: percentText(saturation),
      w: percentText(moisture),
    }),
    label('phases-densities', {
      wet: densityText(soil.wetDensity, style),
      dry: densityText(soil.dryDensity, style),
      full: densityText(soil.saturatedDensity, style),
    }),
    label('phases-to-fill', { water: densityText(soil.waterToSaturate, style) }),
  ];
}

const HIGH = 220;
const VOIDS = 30;
const ROW = 1.4;
/** Room for the texts beside the block. */
const SIDES = {
  wide: { volume: 190, mass: 200 },
  narrow: { volume: 118, mass: 114 },
} as const;

function drawBlock(
  phases: readonly Phase[],
  {
    soil,
    told,
    top,
    style,
  }: {
    readonly soil: SoilPhases;
    readonly told: readonly string[];
    readonly top: number;
    readonly style: DrawStyle;
  },
): Picture {
  const { margin, width, size, small, label, isNarrow } = style;
  const sides = SIDES[isNarrow ? 'narrow' : 'wide'];
  const [left, right] = [margin + VOIDS + sides.volume, width - margin - sides.mass];
  const head = top + small * 1.6;
  let above = head;
  const blocks = phases.map((phase) => {
    const from = above;
    above += phase.share * HIGH;
    return { ...phase, from, to: above };
  });
  const wishes = blocks.map(({ from, to }) => (from + to) / 2);
  const bounds = { spacing: size * ROW, from: head + size * 0.5, to: head + HIGH - size * 0.5 };
  const places = spreadRows(wishes, bounds);
  const heads = { y: head - 6, size: small, style: 'faint' } as const;
  const voids = head + soil.porosity * HIGH;
  const lines = textLines(told, head + HIGH + 10, style);
  return {
    marks: [
      textMark({ text: label('phases-volume'), x: left - 14, anchor: 'end', ...heads }),
      textMark({ text: label('phases-mass'), x: right + 14, ...heads }),
      ...blocks.flatMap(({ fill, from, to }) => blockMark(fill, { left, right, from, to })),
      ...blocks.flatMap((block, index) =>
        rowMarks(block, {
          wish: entry(wishes, index),
          y: entry(places, index),
          left,
          right,
          style,
        }),
      ),
      ...voidMarks(voids, { x: margin + VOIDS - 6, head, share: soil.porosity, style }),
      ...lines.marks,
    ],
    bottom: lines.bottom,
  };
}

/** A phase as a block: stones, lines of water, or nothing. */
function blockMark(
  fill: Phase['fill'],
  {
    left: x,
    right,
    from: y,
    to,
  }: {
    readonly left: number;
    readonly right: number;
    readonly from: number;
    readonly to: number;
  },
): string[] {
  const box = { x, y, width: right - x, height: to - y };
  if (box.height === 0) return [];
  const corners = cornersOfBox(box);
  if (fill === 'stone') return [hatched('area', corners, STONE)];
  const lines = fill === 'water' ? linesAcross(corners, [1, 0], 6) : [];
  return [rectangle('stake', box), ...(lines.length === 0 ? [] : [polylines('hatch', lines)])];
}

/** The voids, air and water together, as a dimension. */
function voidMarks(
  end: number,
  {
    x,
    head,
    share,
    style: { small: size, label },
  }: {
    readonly x: number;
    readonly head: number;
    readonly share: number;
    readonly style: DrawStyle;
  },
): string[] {
  if (share === 0) return [];
  const text = label('phases-voids', { share: percentText(share) });
  const half = textWidth(text, size) / 2;
  const middle = Math.max(head + half, Math.min((head + end) / 2, head + HIGH - half));
  return [
    ...dimensionLine([x, head], [x, end]),
    textMark({ text, x: x - 6, y: Math.round(middle), size, anchor: 'middle', isTurned: true }),
  ];
}

function rowMarks(
  { name, volume, mass }: Phase,
  {
    wish,
    y,
    left,
    right,
    style,
  }: {
    readonly wish: number;
    readonly y: number;
    readonly left: number;
    readonly right: number;
    readonly style: DrawStyle;
  },
): string[] {
  const { size, small, margin } = style;
  const base = y + size * 0.35;
  const edge = left - 14;
  const from = edge - textWidth(volume, size, true) - 6;
  return [
    line('leader', [left - 10, y], [left, wish]),
    line('leader', [right, wish], [right + 10, y]),
    textMark({
      text: fitText(name, small, from - margin - VOIDS),
      x: from,
      y: base,
      size: small,
      anchor: 'end',
      style: 'phase',
    }),
    textMark({ text: volume, x: edge, y: base, size, anchor: 'end', style: 'strong volume' }),
    textMark({ text: mass, x: right + 14, y: base, size, style: 'strong mass' }),
  ];
}

const RATIOS = ['moisture', 'voidRatio'] as const;
const SHARES = ['porosity', 'saturation', 'airVoids'] as const;
const DENSITIES = ['wetDensity', 'dryDensity', 'saturatedDensity', 'waterToSaturate'] as const;

/**
 * Refuses what are no phases of a soil.
 *
 * @throws `WRONG_TYPE`
 */
function requirePhases(value: unknown): asserts value is SoilPhases {
  if (
    isPlain(value) &&
    RATIOS.every((name) => isFrom0(value[name], Number.MAX_VALUE)) &&
    SHARES.every((name) => isFrom0(value[name], 1)) &&
    DENSITIES.every((name) => isDensity(value[name]))
  )
    return;
  const message = `pass the result of soilPhases(), got ${shown(value)}`;
  throw fault('WRONG_TYPE', message, { got: shown(value) });
}

const isFrom0 = (value: unknown, most: number): boolean =>
  typeof value === 'number' && value >= 0 && value <= most;

const isDensity = (value: unknown): boolean => isQuantity(value) && value.dimension === 'density';
