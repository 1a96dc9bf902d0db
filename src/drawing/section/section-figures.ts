import { entry, known } from '../../invariant.js';
import { tapeOfSheet } from '../../job/sheet/layout/tape-of-sheet.js';
import type { EdgePlan, PavementPlan, StringLinePlan } from '../../job/plan/plan.js';
import type { JobPlaces } from '../../job/saved/places-of-plan.js';
import { digRow } from '../../job/sheet/sections/depth-rows.js';
import { edgeNames } from '../../job/sheet/sections/corners.js';
import { setOutText } from '../../job/sheet/sections/set-outs.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { layerMarks, surfaceRows, type LayerMark, type SurfaceRow } from '../surface-rows.js';

/** A depth of the dig, and the figure that the sheet prints for it. Internal. */
export interface DigFigure {
  /** From here down, below the string [m]; the second may lie higher: fill. */
  readonly from: number;
  readonly to: number;
  readonly figure: string;
  /** True where the figure is 0. */
  readonly isZero: boolean;
}

/** How far something reaches beyond the paving, and the figure that the sheet prints. Internal. */
export interface ReachFigure {
  readonly key: DrawingLabelKey;
  /** Beyond the paving [m]. */
  readonly reach: number;
  readonly figure: string;
}

/** What a section shows. Lengths in metres, depths below the string. Internal. */
export interface SectionFigures {
  readonly hasString: boolean;
  readonly surfaces: readonly SurfaceRow[];
  readonly layers: readonly LayerMark[];
  readonly lifts: readonly number[];
  readonly finish: number;
  readonly subgrade: number;
  /** The existing surface, on average. */
  readonly old: number;
  readonly dig: DigFigure;
  readonly isFill: boolean;
  /** True where the ground, once stripped, is filled up to the subgrade. */
  readonly needsFill: boolean;
  /** The lowest of all surfaces. */
  readonly lowest: number;
  /** Old paving and the soil below it; null where nothing is stripped. */
  readonly stripped: {
    readonly paving: DigFigure;
    readonly soil: DigFigure;
    readonly isFill: boolean;
  } | null;
  readonly edge: EdgePlan;
  readonly edgeName: string;
  /** True where something stands at the edge already: a building, a slab, other paving, a restraint. */
  readonly isBounded: boolean;
  readonly restraint: number;
  readonly isTapered: boolean;
  readonly reaches: readonly ReachFigure[];
  /** The farthest reach. */
  readonly beyond: number;
}

/** The figures of a section, as the sheet prints them. Internal. */
export function sectionFigures(
  {
    pavement,
    line,
    job,
  }: {
    readonly pavement: PavementPlan;
    readonly line: StringLinePlan | null;
    readonly job: JobPlaces;
  },
  style: DrawStyle,
): SectionFigures | null {
  const height = line?.stringHeight ?? NO_LENGTH;
  const surfaces = surfaceRows(pavement, height, style);
  const subgrade = height.plus(pavement.buildUp.total).toNumber('m');
  const depths = digFigures(pavement, subgrade, style);
  const edge = edgeToShow(pavement);
  if (edge === undefined) return null;
  const own = known(
    job.pavements.find(({ id }) => id === pavement.id),
    'pavement',
  );
  const isOpen = !edge.base.isZero();
  return {
    hasString: line !== null,
    surfaces,
    layers: layerMarks(pavement, height, style),
    lifts: surfaces.filter(({ kind }) => kind === 'lift').map(({ depth }) => depth),
    finish: height.toNumber('m'),
    subgrade,
    ...depths,
    edge,
    isBounded: edge.kind !== null && edge.kind !== 'open',
    edgeName: entry(edgeNames(own.outline), edge.edge - 1),
    restraint: isOpen ? edge.base.minus(pavement.extension).toNumber('m') : 0,
    isTapered: own.taperedBase === true,
    reaches: reachFigures(edge, pavement, (one) => setOutText(one, { ...style, job })),
    beyond: Math.max(edge.top.toNumber('m'), edge.dig.toNumber('m')),
  };
}

/** The edge whose dig reaches farthest: the first of them. */
const edgeToShow = ({ edges }: PavementPlan): EdgePlan | undefined =>
  edges.reduce<EdgePlan | undefined>(
    (best, edge) => (best === undefined || edge.top.greaterThan(best.top) ? edge : best),
    undefined,
  );

function digFigures({ dig }: PavementPlan, subgrade: number, { units, system }: DrawStyle) {
  const row = digRow(dig, tapeOfSheet(system).onTape);
  const old = subgrade - dig.depth.toNumber('m');
  const bare = subgrade - dig.soil.toNumber('m');
  return {
    old,
    dig: {
      from: old,
      to: subgrade,
      figure: units.depthWithUnit(row.dig.abs()),
      isZero: row.dig.isZero(),
    },
    isFill: row.dig.isNegative(),
    needsFill: row.soil.isNegative(),
    lowest: Math.max(old, bare, subgrade),
    stripped: row.old.isZero()
      ? null
      : {
          paving: { from: old, to: bare, figure: units.depthWithUnit(row.old), isZero: false },
          soil: {
            from: bare,
            to: subgrade,
            figure: units.depthWithUnit(row.soil.abs()),
            isZero: row.soil.isZero(),
          },
          isFill: row.soil.isNegative(),
        },
  };
}

function reachFigures(
  { base, dig, top }: EdgePlan,
  pavement: PavementPlan,
  text: (reach: EdgePlan['dig']) => string,
): ReachFigure[] {
  const reach = (key: DrawingLabelKey, of: EdgePlan['dig']): ReachFigure[] =>
    of.isZero() ? [] : [{ key, reach: of.toNumber('m'), figure: text(of) }];
  return [
    ...(base.equals(dig)
      ? reach('base-and-dig-past-paving', dig)
      : [...reach('base-past-paving', base), ...reach('dig-past-paving', dig)]),
    ...(pavement.top === null || top.equals(dig) ? [] : reach('top-past-paving', top)),
  ];
}
