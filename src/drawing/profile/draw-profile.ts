import { entry, lastOf } from '../../invariant.js';
import { grainRules } from '../frame/grain-hatches.js';
import { text } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { JobPlan, PavementPlan, StringLinePlan } from '../../job/plan/plan.js';
import { requirePlan } from '../../job/require-plan.js';
import {
  checkWidth,
  DRAW_FIELDS,
  drawStyle,
  type DrawOptions,
  type DrawStyle,
} from '../draw-options.js';
import { pavementOf, stringOf } from '../find-in-plan.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { CUT, FILL } from '../frame/hatches.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { STRING_SAMPLE } from '../frame/samples.js';
import { scaleBar } from '../frame/scale.js';
import { fromWords, LONGEST_SITE, stringName, surfaceWords } from '../section/section-words.js';
import { labelName, LAYER_HATCHES } from '../surface-rows.js';
import { profileFigures, type ProfileFigures } from './profile-figures.js';
import { stripMarks } from './profile-strip-marks.js';
import { profileStrips, type Strips } from './profile-strips.js';
import { SECTION_TEXTS } from '../section/section-texts.js';

/** How a profile is drawn. */
export interface DrawProfileOptions extends DrawOptions {
  /** Id of the string. */
  readonly string: string;
}

const OPTIONS = shapeOf<DrawProfileOptions>()({ ...DRAW_FIELDS, string: text() });

/**
 * Draws the profile along a string: the string with its sag, finished grade, the layers, the subgrade,
 * and the existing surface where it was measured, cut and fill hatched. Below stand the figures of each
 * stake as the sheet prints them: station, elevations, ground and dig. It is drawn by elevations where
 * every stake has one, else below a level string. A long string goes on in strips one below the other.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link DrawProfileOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `PLAN_INVALID`, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_TYPE`,
 *   `REQUIRED`, `UNKNOWN_FIELD`, `NOT_FINITE`
 * @example
 * const svg = drawProfile(planJob(job), { system: 'us', string: 'kerb' });
 * svg.includes('role="img"') //=> true
 */
export function drawProfile(plan: JobPlan, options: DrawProfileOptions): string {
  requirePlan(plan);
  const read = readOptions(options, OPTIONS, checkWidth);
  const style = drawStyle(read, SECTION_TEXTS);
  const line = stringOf(plan, read.string);
  const pavement = pavementOf(plan, line.pavement);
  const figures = profileFigures(line, pavement, style);
  const scale = profileStrips(figures, style);
  return frameDrawing(
    {
      kind: 'profile',
      rules: grainRules([...LAYER_HATCHES, CUT, FILL]),
      title: style.label('profile-title', {
        string: stringName(line),
        pavement: labelName(pavement.name),
      }),
      notes: profileNotes(plan.name, figures, style),
      remarks: profileRemarks({ line, figures, scale }, style),
      description: describeProfile(line, figures, style),
      legend: profileLegend(pavement, figures, style),
      draw: (top) => drawStrips(figures, { scale, top, style }),
    },
    style,
  );
}

function drawStrips(
  figures: ProfileFigures,
  {
    scale,
    top,
    style,
  }: {
    readonly scale: Strips;
    readonly top: number;
    readonly style: DrawStyle;
  },
): Picture {
  const marks: string[] = [];
  let y = top;
  for (const strip of scale.strips) {
    const drawn = stripMarks(strip, { figures, scale, top: y, style });
    marks.push(...drawn.marks);
    y = drawn.bottom + 14;
  }
  const bar = scaleBar(
    scale.pixelsPerMetre,
    {
      at: [style.margin, y],
      most: 140,
      name: (text) => style.label('scale-across', { bar: text }),
    },
    style,
  );
  return { marks: [...marks, ...bar], bottom: y + 12 };
}

function profileNotes(site: string, figures: ProfileFigures, style: DrawStyle): string[] {
  const { label, units } = style;
  const isUs = units.isUs;
  const hasLevels = figures.band.some(({ key }) => key === 'row-finish-elevation');
  return [
    label('site', { site: labelName(site, LONGEST_SITE) }),
    [
      label(isUs ? 'depths-us' : 'depths-metric'),
      label(isUs ? 'stations-us' : 'stations-metric'),
      ...(hasLevels ? [label(isUs ? 'elevations-us' : 'elevations-metric')] : []),
    ].join(' '),
    ...missingNotes(figures, style),
    label('caution-dig'),
  ];
}

function profileRemarks(
  {
    line,
    figures,
    scale,
  }: {
    readonly line: StringLinePlan;
    readonly figures: ProfileFigures;
    readonly scale: Strips;
  },
  style: DrawStyle,
): string[] {
  const { label } = style;
  return [
    `${fromWords(line, style)} ${surfaceWords(figures, style)}.`,
    `${scale.factor === 1 ? label('same-scale') : label('heights-scaled', { factor: `${scale.factor}` })} ${label(
      figures.isLevelled ? 'drawn-by-elevations' : 'drawn-below-string',
    )}`,
    ...(figures.hasGroundLine ? [label('ground-straight')] : []),
  ];
}

/** Stakes where nobody measured the ground from this string. */
function missingNotes({ stakes }: ProfileFigures, { label }: DrawStyle): string[] {
  const missing = stakes.filter(({ ground }) => ground === null).map(({ name }) => name);
  return missing.length === 0 ? [] : [label('ground-missing', { stakes: missing.join(', ') })];
}

function describeProfile(line: StringLinePlan, figures: ProfileFigures, style: DrawStyle): string {
  const { label, units } = style;
  const [first, last] = [entry(figures.stakes, 0), lastOf(figures.stakes)];
  const digs = figures.band.find(({ key }) => key === 'row-dig')?.cells ?? [];
  const digWords = figures.stakes.flatMap(({ name, ground }, index) => {
    const cell = digs[index];
    if (cell === undefined || ground === null) return [];
    const isFill = cell.startsWith('-');
    const depth = `${isFill ? cell.slice(1) : cell} ${units.depthUnit}`;
    return [label(isFill ? 'describe-stake-fill' : 'describe-stake-dig', { stake: name, depth })];
  });
  const stations = line.stakes.map(({ station }) => station).sort((a, b) => a.compare(b));
  const [from, to] = [entry(stations, 0), lastOf(stations)];
  return label('describe-profile', {
    first: first.name,
    last: last.name,
    long: units.long(to.minus(from)),
    from: fromWords(line, style),
    surfaces: surfaceWords(figures, style),
    digs: digWords.join(' '),
  });
}

function profileLegend(
  { layerKinds }: PavementPlan,
  { layers }: ProfileFigures,
  style: DrawStyle,
): LegendEntry[] {
  const { label, units } = style;
  return [
    ...legendEntries(style, [
      [STRING_SAMPLE, 'string-level'],
      [{ line: 'finish' }, 'finish'],
    ]),
    ...layers.map(({ name, hatch, figure }) => ({
      sample: { hatch },
      text: label('layer', { layer: name, thickness: `${figure} ${units.depthUnit}` }),
    })),
    ...(layerKinds.length > 1 ? legendEntries(style, [[{ line: 'edge' }, 'layer-line']]) : []),
    ...legendEntries(style, [
      [{ line: 'dig' }, 'subgrade'],
      [{ line: 'old' }, 'old-surface'],
      [{ hatch: CUT }, 'cut-area'],
      [{ hatch: FILL }, 'fill-area'],
    ]),
  ];
}
