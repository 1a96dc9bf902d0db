import type { PavementPlan, StringLinePlan } from '../../job/plan/plan.js';
import type { DrawStyle } from '../draw-options.js';
import { SOIL } from '../frame/grain-hatches.js';
import { FILL, OLD_PAVING } from '../frame/hatches.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { STRING_SAMPLE } from '../frame/samples.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { labelName } from '../surface-rows.js';
import type { SectionFigures } from './section-figures.js';

/** Longest name of a site, in type sizes: about two lines of a phone. Internal. */
export const LONGEST_SITE = 40;

/** What a section says in words, beside its picture. Internal. */
export interface SectionTold {
  readonly site: string;
  readonly pavement: PavementPlan;
  readonly line: StringLinePlan | null;
  readonly figures: SectionFigures;
  readonly factor: number;
}

/** Name of a string in its capitals, as on the sheet. Internal. */
export const stringName = ({ id }: StringLinePlan): string => labelName(id.toUpperCase());

/** The site, units and cautions of a section. Internal. */
export const sectionNotes = (
  { site, line }: SectionTold,
  { label, units }: DrawStyle,
): string[] => [
  label('site', { site: labelName(site, LONGEST_SITE) }),
  `${label(units.isUs ? 'depths-us' : 'depths-metric')} ${
    line === null
      ? label('depths-from-finish')
      : label('depths-from-string', { string: stringName(line) })
  }`,
  label('caution-dig'),
];

/** Scale, edge and dig of a section. Internal. */
export function sectionRemarks({ line, figures, factor }: SectionTold, style: DrawStyle): string[] {
  const { label } = style;
  return [
    factor === 1 ? label('same-scale') : label('heights-scaled', { factor: `${factor}` }),
    edgeWords(figures, style),
    digWords(figures, style),
    ...(line === null ? [] : [label('stake-place')]),
  ];
}

function edgeWords(figures: SectionFigures, { label }: DrawStyle): string {
  const shown = label('edge-shown', {
    edge: figures.edgeName,
    kind: label(edgeKind(figures)),
  });
  return figures.isBounded ? `${shown} ${label('edge-blank')}` : shown;
}

const edgeKind = ({ edge: { kind } }: SectionFigures): DrawingLabelKey =>
  kind === null ? 'edge-not-said' : `edge-${kind}`;

/** The dig and what is stripped, on average. */
function digWords({ dig, isFill, stripped }: SectionFigures, { label }: DrawStyle): string {
  const all = [label(isFill ? 'fill-mean' : 'dig-mean', { depth: dig.figure })];
  if (stripped !== null) {
    all.push(
      label('old-paving-mean', { depth: stripped.paving.figure }),
      label(stripped.isFill ? 'fill-after-stripping' : 'soil-after-stripping', {
        depth: stripped.soil.figure,
      }),
    );
  }
  return all.join(' ');
}

/** The main figures of a section in words. Internal. */
export function describeSection({ line, figures }: SectionTold, style: DrawStyle): string {
  const { label } = style;
  return label('describe-section', {
    from: fromWords(line, style),
    surfaces: surfaceWords(figures, style),
    digs: digWords(figures, style),
  });
}

/** What depths count from. Internal. */
export const fromWords = (line: StringLinePlan | null, { label, units }: DrawStyle): string =>
  line === null
    ? label('describe-finish')
    : label('describe-string', {
        string: stringName(line),
        height: units.depthWithUnit(line.stringHeight),
      });

/** Surfaces and their depths in words. Internal. */
export const surfaceWords = (
  { surfaces }: Pick<SectionFigures, 'surfaces'>,
  { label, units }: DrawStyle,
): string =>
  surfaces
    .map(({ name, figure }) =>
      label('describe-surface', { surface: name, depth: `${figure} ${units.depthUnit}` }),
    )
    .join(', ');

/** The legend of a section. Internal. */
export function sectionLegend({ line, figures }: SectionTold, style: DrawStyle): LegendEntry[] {
  const { label, units } = style;
  return [
    ...figures.layers.map(({ name, hatch, figure }) => ({
      sample: { hatch },
      text: label('layer', { layer: name, thickness: `${figure} ${units.depthUnit}` }),
    })),
    ...legendEntries(style, [
      [{ hatch: SOIL }, 'soil'],
      [{ hatch: OLD_PAVING }, 'old-paving'],
      [{ hatch: FILL }, 'fill-area'],
    ]),
    ...(line === null
      ? []
      : [{ sample: STRING_SAMPLE, text: label('string', { string: stringName(line) }) }]),
    ...legendEntries(style, [
      [{ line: 'finish' }, 'finish'],
      [{ line: 'lift' }, 'lift-line'],
      [{ line: 'old' }, 'old-surface-mean'],
      [{ line: 'dig' }, 'dig-line'],
    ]),
  ];
}
