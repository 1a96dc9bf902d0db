import { capital } from '../../../capital.js';
import type { FieldPath } from '../../../errors.js';
import { fromSI, type Length } from '../../../units/quantity.js';
import { pointFrom } from '../../../units/vector.js';
import { given } from '../../../working.js';
import type { LaidOut } from '../lay-out.js';
import { done, take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { EdgePlan, PavementPlan } from '../plan.js';
import { hasBulge, placedRings, pointsAt } from './edge-steps.js';

/** The working of the areas in plan. Internal. */
export function areaSteps(laid: LaidOut, plan: PavementPlan): PlacedStep[] {
  return [
    pavingStep(laid, plan),
    ...(['base', 'dig'] as const).flatMap((name) => [
      movedStep(name, plan),
      ...countedSteps(name, plan),
    ]),
    ...outlineSteps(plan),
  ];
}

function pavingStep({ pavement }: LaidOut, { areas }: PavementPlan): PlacedStep {
  const { origin, holes } = pavement.outline;
  const rings = placedRings(pavement);
  const corners = rings.flatMap(({ ring, at }) =>
    ring.points.map((point, k) => ({
      place: pointFrom(origin, point),
      path: [...pointsAt(pavement, at), k],
    })),
  );
  const isPlain = holes.length === 0 && !hasBulge(pavement.outline);
  const closed = isPlain ? [...corners, ...corners.slice(0, 1)] : corners;
  const order = isPlain ? ', in order, the first again at the end' : '';
  const list = (axis: 'x' | 'y') =>
    take(
      axis,
      `${axis} of each point${order}`,
      closed.map(({ place }) => place[axis]),
      ...closed.map(({ path }) => [...path, axis]),
    );
  const shown = {
    title: 'Area of the paving',
    result: given('A', 'area of the paving', areas.paving),
    gives: [['areas', 'paving']],
  };
  if (isPlain) {
    return worked({
      ...shown,
      formula:
        'A = abs(sum((x[i] - x[1]) * (y[i + 1] - y[1]) - (x[i + 1] - x[1]) * (y[i] - y[1]))) / 2',
      takes: [list('x'), list('y')],
    });
  }
  const heights = rings.flatMap(({ ring, at }) =>
    (ring.bulges ?? [])
      .flatMap((bulge) => (bulge === undefined ? [] : [fromSI('length', bulge)]))
      .map((value, k) => ({ value, path: [...at, 'arcs', k, 'bulgeMiddleOrdinate'] })),
  );
  return done({
    ...shown,
    procedure: 'outlineArea',
    method: 'Adds up the area inside the outline, arcs included, less its holes.',
    takes: [list('x'), list('y'), ...ordinates(heights)],
  });
}

const ordinates = (heights: readonly { value: Length; path: FieldPath }[]): Taken[] =>
  heights.length === 0
    ? []
    : [
        take(
          'M',
          'middle ordinate of each arc',
          heights.map(({ value }) => value),
          ...heights.map(({ path }) => path),
        ),
      ];

const outward = (name: 'base' | 'dig' | 'top', edges: readonly EdgePlan[]): Taken =>
  take(
    'd',
    `distance out of each edge: ${edges.map(({ kind }) => kind ?? 'not described').join(', ')}`,
    edges.map((edge) => edge[name]),
    ...edges.map((_, index) => ['edges', index, name]),
  );

const MOVED = 'Moves each edge of the outline of the paving out by its distance, and returns';

const movedStep = (name: 'base' | 'dig', { areas, edges }: PavementPlan): PlacedStep =>
  done({
    title: `Area of the ${name}`,
    procedure: 'widenOutline',
    method: `${MOVED} the area inside.`,
    takes: [
      take('A', 'area of the paving', areas.paving, ['areas', 'paving']),
      outward(name, edges),
    ],
    result: given('Aw', `area of the ${name}`, areas[name]),
    gives: [['areas', name]],
    source: 'edge-restraints',
  });

/** What is counted here: the area less the part that another pavement has too. */
function countedSteps(name: 'base' | 'dig', { areas }: PavementPlan): PlacedStep[] {
  const [field, whole] = [name === 'base' ? 'ownBase' : 'ownDig', areas[name]] as const;
  const own = areas[field];
  const all = take('A', `area of the ${name}`, whole, ['areas', name]);
  const result = given('Ao', `area of the ${name}, counted here`, own);
  const gives = [['areas', field]];
  const title = `Area of the ${name} counted with this pavement`;
  if (own.equals(whole)) return [worked({ title, formula: 'Ao = A', takes: [all], result, gives })];
  const shared = `area of the ${name} counted with other pavements`;
  return [
    done({
      title: capital(shared),
      procedure: 'planJob',
      method:
        'Cuts the outline with those of the other pavements. A shared part counts with the deepest dig.',
      takes: [all],
      result: given('As', shared, whole.minus(own)),
      gives: [],
    }),
    worked({
      title,
      formula: 'Ao = A - As',
      takes: [all, take('As', shared, whole.minus(own))],
      result,
      gives,
    }),
  ];
}

/** The corners of the dig, and those of its top. */
function outlineSteps({ digOutline, digHoles, digArcs, top, edges }: PavementPlan): PlacedStep[] {
  const corners = (
    title: string,
    { points, arcs }: Pick<NonNullable<PavementPlan['top']>, 'points' | 'arcs'>,
    { at, arcsAt, by }: { at: FieldPath; arcsAt: FieldPath; by: 'dig' | 'top' },
  ) =>
    done({
      title,
      procedure: 'widenOutline',
      method: `${MOVED} the corners, and the arcs between them.`,
      takes: [outward(by, edges)],
      result: given('P', 'x and y of each corner, and the middle ordinates of arcs', [
        ...points.flatMap(({ x, y }) => [x, y]),
        ...arcs.map(({ bulgeMiddleOrdinate }) => bulgeMiddleOrdinate),
      ]),
      gives: [
        ...points.flatMap((_, k) => [
          [...at, k, 'x'],
          [...at, k, 'y'],
        ]),
        ...arcs.map((_, k) => [...arcsAt, k, 'bulgeMiddleOrdinate']),
      ],
    });
  const ring = (base: FieldPath) => ({ at: [...base, 'points'], arcsAt: [...base, 'arcs'] });
  const outer = { at: ['digOutline'], arcsAt: ['digArcs'], by: 'dig' } as const;
  return [
    corners('Corners of the dig', { points: digOutline, arcs: digArcs }, outer),
    ...digHoles.map((hole, k) =>
      corners(`Corners of island ${k + 1} in the dig`, hole, {
        ...ring(['digHoles', k]),
        by: 'dig',
      }),
    ),
    ...(top === null
      ? []
      : [
          corners('Corners of the top of the slope', top, { ...ring(['top']), by: 'top' }),
          ...top.holes.map((hole, k) =>
            corners(`Corners of island ${k + 1} at the top of the slope`, hole, {
              ...ring(['top', 'holes', k]),
              by: 'top',
            }),
          ),
          done({
            title: 'Area at the top of the slope',
            procedure: 'widenOutline',
            method: `${MOVED} the area inside.`,
            takes: [outward('top', edges)],
            result: given('At', 'area at the top of the slope', top.area),
            gives: [['top', 'area']],
          }),
        ]),
  ];
}
