import { fault } from '../../errors.js';
import type { BerggrenDepth } from '../../ground/frost/berggren-depth.js';
import type { FrozenLayer } from '../../ground/frost/frost-layers.js';
import type { StefanDepth } from '../../ground/frost/stefan-depth.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { isLength } from '../../units/is-length.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { frameDrawing } from '../frame/frame-drawing.js';
import { grainRules, SOIL, STONE } from '../frame/grain-hatches.js';
import { FILL, type Hatch } from '../frame/hatches.js';
import type { LegendEntry } from '../frame/legend.js';
import { labelName } from '../surface-rows.js';
import { GROUND_TEXTS } from './ground-texts.js';
import { strataPicture, type Level, type Strata, type Stratum } from './strata.js';

/** How a depth of frost is drawn. */
export type DrawFrostDepthOptions = DrawOptions;

/**
 * Draws how deep it freezes: the layers from the surface down to below the frost, to scale, with the
 * depth of frost across them and what freezes of each layer. The result of `berggrenDepth` has a second
 * line, the depth by the conduction of heat in both zones.
 *
 * @param frost - the result of `berggrenDepth` or `stefanDepth`; not changed
 * @param options - see {@link DrawFrostDepthOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const clay = {
 *   name: 'clay',
 *   conductivity: { value: 2, unit: 'W/(m K)' },
 *   latentHeat: { value: 86400, unit: 'kJ/m3' },
 * } as const;
 * const winter = { airIndex: { value: 250, unit: 'C-days' }, surfaceFactor: 1 } as const;
 * const svg = drawFrostDepth(stefanDepth({ ...winter, layers: [clay] }), { system: 'metric' });
 * svg.includes('clay: 1000 mm of it freezes') //=> true
 */
export function drawFrostDepth(
  frost: BerggrenDepth | StefanDepth,
  options: DrawFrostDepthOptions,
): string {
  requireFrost(frost);
  const style = readStyle(options, GROUND_TEXTS);
  const { label, units } = style;
  const strata = frostStrata(frost, style);
  return frameDrawing(
    {
      kind: 'frost',
      rules: grainRules([FILL, SOIL, STONE]),
      title: label('frost-title'),
      notes: [
        `${label(units.isUs ? 'depths-us' : 'depths-metric')} ${label('ground-from-surface')} ${label('ground-to-scale')}`,
        label('frost-estimate'),
        ...(frost.extrapolated ? [label('frost-beyond')] : []),
      ],
      description: label('describe-frost', {
        depth: units.depthWithUnit(frost.depth),
        equation: equationOf(frost, style),
        layers: frost.layers.map((one) => frozenWords(one, style)).join('; '),
      }),
      legend: frostLegend(frost, strata, style),
      draw: (top) => strataPicture(strata, top, style),
    },
    style,
  );
}

const equationOf = (frost: BerggrenDepth | StefanDepth, { label }: DrawStyle): string =>
  label('coefficient' in frost ? 'equation-berggren' : 'equation-stefan');

const HATCH_OF = { sandy: STONE, 'silt-clay': SOIL } as const;
const hatchOf = ({ soil }: FrozenLayer): Hatch => (soil === null ? FILL : HATCH_OF[soil]);

/** The picture ends this much below the frost, or below the layers where nothing freezes. */
const BELOW = 1.2;
/** It shows this much at least [m]. */
const LEAST = 0.3;

/** The layers with the frost across them. */
function frostStrata(frost: BerggrenDepth | StefanDepth, style: DrawStyle): Strata {
  const { units, label } = style;
  const lines = frostLevels(frost, style);
  const deepest = Math.max(...lines.map(({ depth }) => depth), 0);
  const given = frost.layers.reduce((sum, one) => sum + (one.thickness?.toNumber('m') ?? 0), 0);
  const lowest = Math.max((deepest > 0 ? deepest : given) * BELOW, LEAST);
  const strata: Stratum[] = [];
  const levels: Level[] = [
    { name: label('surface'), depth: 0, figure: units.depth(NO_LENGTH), line: 'finish' },
  ];
  let top: Length = NO_LENGTH;
  frost.layers.forEach((layer, index) => {
    const { thickness } = layer;
    const from = top.toNumber('m');
    if (from >= lowest) return;
    const name = labelName(layer.name);
    const isLast = index === frost.layers.length - 1 || thickness === null;
    const to = isLast ? lowest : from + thickness.toNumber('m');
    if (index > 0) {
      const words = label('ground-layer-top', { layer: name });
      levels.push({ name: words, depth: from, figure: units.depth(top), line: 'edge' });
    }
    strata.push({
      name,
      hatch: hatchOf(layer),
      top: from,
      bottom: Math.min(to, lowest),
      figure: thickness === null ? '' : units.depth(thickness),
    });
    top = thickness === null ? top : top.plus(thickness);
  });
  return {
    strata,
    levels: [...levels, ...lines],
    lowest,
    goesOn: true,
    reach: frost.depth.isZero()
      ? null
      : {
          depth: frost.depth.toNumber('m'),
          text: label('frost-reach', { depth: units.depthWithUnit(frost.depth) }),
        },
  };
}

/** The depth of frost, and that of two zones; none without frost. */
function frostLevels(
  frost: BerggrenDepth | StefanDepth,
  { label, units }: DrawStyle,
): readonly Level[] {
  if (frost.depth.isZero()) return [];
  const level = (name: string, depth: Length, line: string): Level => ({
    name,
    depth: depth.toNumber('m'),
    figure: units.depth(depth),
    line,
  });
  const zones =
    'twoZoneDepth' in frost ? [level(label('frost-zones-level'), frost.twoZoneDepth, 'old')] : [];
  return [level(label('frost-level'), frost.depth, 'string'), ...zones];
}

/** What freezes of a layer, in words. */
function frozenWords(
  { name, thickness, frozen }: FrozenLayer,
  { label, units }: DrawStyle,
): string {
  const values = { layer: labelName(name), frozen: units.depthWithUnit(frozen) };
  if (frozen.isZero()) return label('frozen-none', values);
  const isAll = thickness !== null && frozen.toNumber('m') >= thickness.toNumber('m');
  return label(isAll ? 'frozen-all' : 'frozen-part', values);
}

function frostLegend(
  frost: BerggrenDepth | StefanDepth,
  { strata }: Strata,
  style: DrawStyle,
): LegendEntry[] {
  const { label } = style;
  return [
    ...frost.layers
      .slice(0, strata.length)
      .map((one) => ({ sample: { hatch: hatchOf(one) }, text: frozenWords(one, style) })),
    ...(frost.depth.isZero()
      ? [{ sample: { line: 'finish' }, text: label('frost-none') }]
      : [
          {
            sample: { line: 'string' },
            text: label('frost-line', { equation: equationOf(frost, style) }),
          },
          ...('twoZoneDepth' in frost
            ? [{ sample: { line: 'old' }, text: label('frost-zones') }]
            : []),
        ]),
  ];
}

/**
 * Refuses what is no depth of frost.
 *
 * @throws `WRONG_TYPE`
 */
function requireFrost(value: unknown): asserts value is BerggrenDepth | StefanDepth {
  if (isFrost(value)) return;
  const message = `pass the result of berggrenDepth() or stefanDepth(), got ${shown(value)}`;
  throw fault('WRONG_TYPE', message, { got: shown(value) });
}

function isFrost(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { depth, layers, extrapolated } = value;
  const isBerggren = !('coefficient' in value) || isLength(value['twoZoneDepth']);
  return (
    isLength(depth) &&
    isBerggren &&
    typeof extrapolated === 'boolean' &&
    Array.isArray(layers) &&
    layers.length > 0 &&
    layers.every(isFrozenLayer)
  );
}

function isFrozenLayer(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { name, soil, thickness, frozen } = value;
  return (
    typeof name === 'string' &&
    (soil === null || (typeof soil === 'string' && Object.hasOwn(HATCH_OF, soil))) &&
    (thickness === null || isLength(thickness)) &&
    isLength(frozen)
  );
}
