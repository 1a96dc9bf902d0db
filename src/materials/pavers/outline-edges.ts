// Cuts follow the outline of the paving, which `outline` reads and checks.
import { entry } from '../../invariant.js';
import { arcOf, endDirections } from '../../outline/arc.js';
import { isOutwardRight } from '../../outline/chords.js';
import { readOutline, type OutlineInput } from '../../outline/read-outline.js';
import { ringsOf, type Outline, type Ring } from '../../outline/ring.js';
import { custom, optional, quantity } from '../../input/field.js';
import { AZIMUTH } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { angle, type AngleInput } from '../../units/construct.js';
import { fromSI, fromSIDecimal, type Angle, type Length } from '../../units/quantity.js';
import {
  compareRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  type Ratio,
} from '../../units/ratio.js';
import { minus, norm, type Vector } from '../../units/vector.js';
import { NO_ANGLE } from '../../units/zero.js';
import { foldedAngle } from './turn.js';

/** An outline and the pattern laid in it. */
export interface OutlineEdgesOptions {
  /** Edge of the paving, with arcs and holes if it has any; see `outlineArea`. */
  readonly outline: OutlineInput;
  /**
   * Direction of the long side of the pavers (the reference line of a 45 herringbone),
   * counter-clockwise from the x axis [angle], up to ten turns either way. Default: 0.
   */
  readonly axis?: AngleInput;
}

const OPTIONS = shapeOf<OutlineEdgesOptions>()({
  outline: custom(readOutline),
  axis: optional(quantity(AZIMUTH), NO_ANGLE),
});

/** An edge of an outline, for counting cuts. */
export interface OutlineEdge {
  /** Length along the edge. */
  readonly length: Length;
  /**
   * Angle between the edge and the axis of the pattern, 0 to 90 degrees; on an arc, the angle at
   * its start.
   */
  readonly angle: Angle;
  /** Turn of an arc from start to end, positive to the left of travel; 0 for a straight edge. */
  readonly turn: Angle;
}

/** The edges of an outline, ready for `unitCount`. */
export interface OutlineEdges {
  /** Edge k runs from point k to the next; those of the holes follow. */
  readonly edges: readonly OutlineEdge[];
}

/**
 * The edges of an outline with their length and their angle to the axis of the pattern, ready for
 * `unitCount`: `a = |atan2(dy, dx) - axis|`, folded into 0 to 90 degrees; for an arc, the angle at
 * its start and its turn. Angles are exact along the coordinate axes and their diagonals, else
 * worked out in floats (to 1e-15 radians); lengths are taken to 40 digits.
 *
 * @param options - see {@link OutlineEdgesOptions}
 * @returns the edges in order; edge k runs from point k to the next, those of the holes follow
 * @throws `OUT_OF_RANGE`, the codes of `outlineArea` and the reading codes
 * @source derived
 * @example
 * const drive = { unit: 'm', points: [[0, 0], [12, 0], [12, 5], [0, 5]] } as const;
 * const { edges } = outlineEdges({ outline: drive });
 * edges.map((edge) => `${edge.length.to('m')} m at ${edge.angle.to('deg')}`)
 * //=> ['12 m at 0', '5 m at 90', '12 m at 0', '5 m at 90']
 */
export function outlineEdges(options: OutlineEdgesOptions): OutlineEdges {
  const { outline, axis } = readOptions(options, OPTIONS);
  return Object.freeze({ edges: Object.freeze(edgesOf(outline, axis)) });
}

const ALONG_Y = angle(90, 'deg');
const DIAGONAL = angle(45, 'deg');
const OTHER_DIAGONAL = angle(135, 'deg');

/** The edges of an outline that has been read, against an axis. Internal. */
export const edgesOf = (outline: Outline, axis: Angle): OutlineEdge[] =>
  ringsOf(outline).flatMap((ring, index) => edgesOfRing(ring, index > 0, axis));

function edgesOfRing(ring: Ring, isHole: boolean, axis: Angle): OutlineEdge[] {
  const isRight = isOutwardRight(ring, isHole);
  return ring.points.map((from, index) => {
    const to = entry(ring.points, (index + 1) % ring.points.length);
    const bulge = ring.bulges?.[index];
    if (bulge !== undefined) return arcEdge(from, to, isRight ? bulge : negateRatio(bulge), axis);
    const along = minus(to, from);
    const length = fromSI('length', norm(along));
    const by = foldedAngle(directionOf(along).minus(axis));
    return Object.freeze({ length, angle: by, turn: NO_ANGLE });
  });
}

/** An arc that bulges to the right of travel turns to the left. */
function arcEdge(from: Vector, to: Vector, bulgeRight: Ratio, axis: Angle): OutlineEdge {
  const [start] = endDirections(from, to, bulgeRight);
  const { length, angle: size } = arcOf(from, to, bulgeRight);
  const turn = fromSIDecimal('angle', signOfRatio(bulgeRight) < 0 ? size.negated() : size);
  return Object.freeze({
    length: fromSI('length', length),
    angle: directionOf(start).minus(axis),
    turn,
  });
}

/** Direction of a line, without sense. */
function directionOf({ x, y }: Vector): Angle {
  if (signOfRatio(y) === 0) return NO_ANGLE;
  if (signOfRatio(x) === 0) return ALONG_Y;
  if (compareRatios(x, y) === 0) return DIAGONAL;
  if (compareRatios(x, negateRatio(y)) === 0) return OTHER_DIAGONAL;
  return angle(Math.atan2(ratioToNumber(y), ratioToNumber(x)), 'rad');
}
