// Shows how the area and the perimeter of an outline add up.
import { entry } from '../invariant.js';
import { fromSI, type Area, type Length } from '../units/quantity.js';
import { divideRatios, type Ratio, wholeRatio } from '../units/ratio.js';
import { minus, norm, type Vector } from '../units/vector.js';
import { derivedStep, given, type Step, type StepInput } from '../working.js';
import { makeArc, type Arc } from './arc.js';
import { isOutwardRight } from './chords.js';
import { areaOfDouble } from './double-area.js';
import { forEachEdge, hasArcs, ringsOf, type Outline, type Ring } from './ring.js';
import { enclosed, segmentOf } from './ring-area.js';

/** The working of an outline that has been measured. Internal. */
export function areaSteps(
  outline: Outline,
  { area, perimeter }: { readonly area: Area; readonly perimeter: Length },
): Step[] {
  const { holes } = outline;
  const [outer, ...inner] = ringsOf(outline).map((ring, index) =>
    areaOfDouble(enclosed(ring, index > 0)),
  );
  if (holes.length === 0 || outer === undefined) {
    return [...ringSteps(outline, null, area), perimeterStep(outline, perimeter)];
  }
  return [
    ...ringSteps(outline, null, outer),
    ...holes.flatMap((hole, index) => ringSteps(hole, index, entry(inner, index))),
    derivedStep({
      title: 'Area of the outline less its holes',
      formula: 'A = O - sum(h)',
      given: [
        given('O', 'area inside the outer edge', outer),
        given('h', 'holes, in order', inner),
      ],
      result: given('A', 'area', area),
    }),
    perimeterStep(outline, perimeter),
  ];
}

/** The working of one ring: a hole by its index, null for the outer one. */
function ringSteps(ring: Ring, hole: number | null, area: Area): Step[] {
  const arcs = arcsAlong(ring, hole !== null);
  const formula = 'sum(x[i] * y[i + 1] - x[i + 1] * y[i]) / 2';
  return [
    ...arcs.flatMap(segmentSteps),
    derivedStep({
      title: hole === null ? 'Area of the outline' : `Area of hole ${hole}`,
      formula: arcs.length === 0 ? `A = abs(${formula})` : `A = abs(${formula} + sum(s))`,
      given: [
        ...pointsOf(ring),
        ...(arcs.length === 0
          ? []
          : [
              given(
                's',
                `segment at edge ${arcs.map(({ edge }) => edge).join(', ')}, + on the right of its chord`,
                arcs.map(({ signed }) => signed),
              ),
            ]),
      ],
      result: given('A', 'area', area),
    }),
  ];
}

interface ArcAlong {
  readonly edge: number;
  readonly arc: Arc;
  /** Area between the arc and its chord, + on the right of a-b. */
  readonly signed: Area;
}

function arcsAlong(ring: Ring, isHole: boolean): ArcAlong[] {
  const isRight = isOutwardRight(ring, isHole);
  const arcs: ArcAlong[] = [];
  forEachEdge(ring.points, (a, b, edge) => {
    const bulge = ring.bulges?.[edge];
    if (bulge === undefined) return;
    const signed = fromSI('area', half(segmentOf(a, b, { bulge, isRight }).twice));
    arcs.push({ edge, arc: makeArc(norm(minus(b, a)), bulge), signed });
  });
  return arcs;
}

function segmentSteps({ edge, arc, signed }: ArcAlong): Step[] {
  const chord = given('C', 'chord', long(arc.chord));
  const height = given('M', 'middle ordinate', long(arc.height));
  const radius = given('R', 'radius', long(arc.radius));
  return [
    derivedStep({
      title: `Radius of the arc of edge ${edge}`,
      formula: 'R = C^2 / (8 * M) + M / 2',
      given: [chord, height],
      result: radius,
    }),
    derivedStep({
      title: `Segment between the arc of edge ${edge} and its chord`,
      formula: 'S = (R^2 * 4 * atan(2 * M / C) - C * (R - M)) / 2',
      given: [radius, height, chord],
      result: given('S', 'segment', signed.abs()),
    }),
  ];
}

function perimeterStep(outline: Outline, perimeter: Length): Step {
  const result = given('P', 'perimeter', perimeter);
  if (!hasArcs(outline) && outline.holes.length === 0) {
    return derivedStep({
      title: 'Perimeter of the outline',
      formula: 'P = sum(sqrt((x[i + 1] - x[i])^2 + (y[i + 1] - y[i])^2))',
      given: pointsOf(outline),
      result,
    });
  }
  return derivedStep({
    title: 'Perimeter of the outline, holes and arcs included',
    formula: 'P = sum(l)',
    given: [
      given('l', 'length of each edge, arcs along the curve', ringsOf(outline).flatMap(edgesOf)),
    ],
    result,
  });
}

function edgesOf({ points, bulges }: Ring): Length[] {
  const lengths: Length[] = [];
  forEachEdge(points, (a, b, edge) => {
    const chord = norm(minus(b, a));
    const bulge = bulges?.[edge];
    lengths.push(long(bulge === undefined ? chord : makeArc(chord, bulge).length));
  });
  return lengths;
}

/** The corners of a closed figure as two lists that end with the first. Internal. */
export function closedPoints(points: readonly Vector[], from: string): [StepInput, StepInput] {
  const closed = [...points, ...points.slice(0, 1)];
  const name = (axis: string) =>
    `${axis} of each point ${from}, in order, the first again at the end`;
  return [
    given(
      'x',
      name('x'),
      closed.map(({ x }) => long(x)),
    ),
    given(
      'y',
      name('y'),
      closed.map(({ y }) => long(y)),
    ),
  ];
}

const pointsOf = ({ points }: Ring): StepInput[] =>
  closedPoints(points, 'from the first of the outline');

const long = (metres: Ratio): Length => fromSI('length', metres);

const half = (value: Ratio): Ratio => divideRatios(value, wholeRatio(2));
