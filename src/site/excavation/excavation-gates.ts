import { choice, object, optional, quantity } from '../../input/field.js';
import { DEPTH, DEPTH_OR_NONE, SET_BACK, SITE_LENGTH_OR_NONE, TIME } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { statusOf, type SourceId } from '../../sources/catalogue.js';
import type { SourceStatus } from '../../sources/source.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import {
  DEPTH_GATES,
  EXCAVATION_DISTANCES,
  EXCAVATION_SLOPES,
  SHORT_TERM_SLOPE,
  SOIL_TYPES,
  type DepthGateId,
  type SoilType,
} from '../../sources/excavation-rules.js';
import type { ReferenceNumber, ReferenceValue } from '../../sources/reference-value.js';
import { inBothSystems, type SystemText } from '../../sources/system-text.js';
import type { LengthInput, TimeInput } from '../../units/construct.js';
import type { Length, Time } from '../../units/quantity.js';
import { formulaStep, given, published, withWorking, type Worked } from '../../working.js';

/** A footing near the dig. */
export interface FootingInput {
  /** Distance from the foot of the side to the footing [length], 0 to 10 km. */
  readonly distance: LengthInput;
  /** Depth of the bottom of the footing, from the surface the dig is measured from [length], 0 to 50 m. */
  readonly bottom: LengthInput;
}

/** An open dig, and loads and footings near it. */
export interface ExcavationGatesOptions {
  /** Deepest point of the dig [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
  /**
   * Soil class set by a competent person: `stable-rock`, `A`, `B` or `C`; else `not-classified`,
   * which is sloped as C.
   */
  readonly soil: SoilType;
  /** Distance from the edge to spoil and gear [length], 0 to 100 m. Default: not known. */
  readonly spoilDistance?: LengthInput;
  /** Time the dig stays open [time]. Up to 24 h, soil A may be steeper. Default: not known. */
  readonly openTime?: TimeInput;
  /** A footing near the dig. Default: none. */
  readonly footing?: FootingInput;
}

const FOOTING = shapeOf<FootingInput>()({
  distance: quantity(SITE_LENGTH_OR_NONE),
  bottom: quantity(DEPTH_OR_NONE),
});

const OPTIONS = shapeOf<ExcavationGatesOptions>()({
  depth: quantity(DEPTH),
  soil: choice(SOIL_TYPES),
  spoilDistance: optional(quantity(SET_BACK)),
  openTime: optional(quantity(TIME)),
  footing: optional(object(FOOTING)),
});

/** A rule that applies to this dig. */
export interface ReachedGate {
  /** Which rule it is. */
  readonly id:
    | DepthGateId
    | 'competent-person'
    | 'spoil-set-back'
    | 'no-system'
    | 'footing-level'
    | 'footing-line';
  /** Depth or distance in the rule; null if it has none. */
  readonly from: Length | null;
  /** The rule in the words the crew uses. */
  readonly text: SystemText;
  /** Where it is printed. */
  readonly source: SourceId;
  /** How far it can be traced. */
  readonly status: SourceStatus;
}

/** The sides of an open dig and the rules that apply. */
export interface ExcavationGates extends Cautioned, Worked {
  /** Batter of the steepest side in the table, run over rise; null below the end of the table. */
  readonly runOverRise: string | null;
  /**
   * Distance from the foot of the side out to its top edge, at that slope; null below the end of
   * the table.
   */
  readonly daylightOffset: Length | null;
  /** True if the table gives no slope: an engineer designs the sides. */
  readonly isBeyondTable: boolean;
  /** Rules that apply. Other rules may apply that are not listed. */
  readonly gates: readonly ReachedGate[];
  /** Who decides. */
  readonly whoDecides: string;
  /** What the slopes do not cover. */
  readonly notes: readonly string[];
}

/**
 * Rules of 29 CFR 1926 Subpart P that apply at a depth, and the setback of the top edge if the
 * sides are sloped: `offset = depth x run / rise`. It lists rules and approves nothing. A competent
 * person on the site decides, and other rules apply elsewhere.
 *
 * @param options - see {@link ExcavationGatesOptions}
 * @returns slope and offset of the top edge, the rules that apply, who decides; cautions
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source excavation-rules
 * @source excavation-numbers
 * @example
 * const dig = excavationGates({ depth: '1.3 m', soil: 'C', spoilDistance: '1 m' });
 * dig.daylightOffset?.to('m').toString() //=> '1.95'
 * dig.gates.map(({ id }) => id) //=> ['competent-person', 'egress', 'atmosphere', 'no-system']
 */
export function excavationGates(options: ExcavationGatesOptions): ExcavationGates {
  const read = readOptions(options, OPTIONS);
  const { depth, soil, spoilDistance: spoil, openTime, footing } = read;
  const isBeyondTable = isReached('engineer', depth);
  const slope = slopeFor(soil, depth, openTime);
  const offset = depth.times(slope.value);
  const found = {
    runOverRise: isBeyondTable ? null : slope.value,
    daylightOffset: isBeyondTable ? null : offset,
    isBeyondTable,
    gates: [
      COMPETENT_PERSON,
      ...spoilGate(spoil),
      ...depthGates(depth, soil),
      ...footingGates(depth, footing),
    ],
    whoDecides: WHO_DECIDES,
    notes: NOTES,
    cautions: cautionsFor(
      'excavation',
      'utilities',
      ...(footing === undefined ? [] : (['structure'] as const)),
    ),
  };
  return withWorking(found, () => [
    formulaStep({
      title: 'Top edge of a sloped side',
      formula: 'x = e * h',
      given: [
        given('e', 'depth', depth),
        published('h', `run over rise, soil ${soil}`, Number(slope.value), slope.source),
      ],
      result: given('x', isBeyondTable ? 'offset (table ends above this depth)' : 'offset', offset),
      source: slope.source,
    }),
  ]);
}

const WHO_DECIDES =
  'A competent person on the site classifies the soil and decides on sides, access and spoil, before every shift and after rain. This list is a reminder, not an approval.';
const NOTES: readonly string[] = Object.freeze([
  'Soil dug before, wet, layered toward the dig or shaken by traffic and plates is weaker than it looks.',
  'The slopes are for simple sides without loads near the edge. Trees, walls, slabs and trucks near the edge need more.',
]);

const COMPETENT_PERSON: ReachedGate = Object.freeze({
  id: 'competent-person',
  from: null,
  text: inBothSystems(
    'A competent person inspects the dig before each shift, after rain and whenever anything changes.',
  ),
  source: 'excavation-numbers',
  status: statusOf('excavation-numbers'),
});

const GATE_IDS = [
  'egress',
  'atmosphere',
  'protective-system',
  'walkway',
  'engineer',
] as const satisfies readonly DepthGateId[];

function isReached(id: DepthGateId, depth: Length): boolean {
  const { depth: figure, fromDepthOn } = DEPTH_GATES[id];
  const order = depth.compare(referenceQuantity('length', figure));
  return fromDepthOn ? order >= 0 : order > 0;
}

/** A short-term dig in soil A may be steeper; every other case follows the table. */
function slopeFor(soil: SoilType, depth: Length, openTime: Time | undefined): ReferenceNumber {
  const { maximumDepth, maximumTime, runOverRise } = SHORT_TERM_SLOPE;
  const isShort =
    openTime !== undefined &&
    openTime.compare(referenceQuantity('time', maximumTime)) <= 0 &&
    depth.compare(referenceQuantity('length', maximumDepth)) <= 0;
  return soil === SHORT_TERM_SLOPE.soil && isShort ? runOverRise : EXCAVATION_SLOPES[soil];
}

function depthGates(depth: Length, soil: SoilType): ReachedGate[] {
  const reached = GATE_IDS.filter((id) => isReached(id, depth)).map((id): ReachedGate => {
    const { depth: figure, text } = DEPTH_GATES[id];
    const from = referenceQuantity('length', figure);
    return { id, from, text, source: figure.source, status: statusOf(figure.source) };
  });
  const below = isReached('protective-system', depth) || soil === 'stable-rock';
  return below ? reached : [...reached, noSystemGate()];
}

/** A sentence with a figure of a rule: as it is printed, and in metres to the centimetre. */
const withFigure = (figure: ReferenceValue, text: (figure: string) => string): SystemText => ({
  us: text(`${figure.value} ${figure.unit}`),
  metric: text(`${referenceQuantity('length', figure).to('m').toFixed(2)} m`),
});

function noSystemGate(): ReachedGate {
  const figure = DEPTH_GATES['protective-system'].depth;
  return {
    id: 'no-system',
    from: referenceQuantity('length', figure),
    text: withFigure(
      figure,
      (depth) =>
        `Under ${depth} the sides may be left without protection only if a competent person has examined the ground and found no sign that it could cave in.`,
    ),
    source: figure.source,
    status: statusOf(figure.source),
  };
}

function spoilGate(distance: Length | undefined): ReachedGate[] {
  const figure = EXCAVATION_DISTANCES.spoilSetBack;
  const from = referenceQuantity('length', figure);
  if (distance !== undefined && distance.compare(from) >= 0) return [];
  return [
    {
      id: 'spoil-set-back',
      from,
      text: withFigure(
        figure,
        (setBack) =>
          `Keep spoil, stone and gear at least ${setBack} back from the edge, or hold them back.`,
      ),
      source: figure.source,
      status: statusOf(figure.source),
    },
  ];
}

type Footing = Values<typeof FOOTING>;

/** A dig below the bottom of a footing (1926.651(i)(2)), or below 1 to 1 from it. */
function footingGates(depth: Length, footing: Footing | undefined): ReachedGate[] {
  if (footing === undefined || depth.compare(footing.bottom) <= 0) return [];
  const { footingLine } = EXCAVATION_DISTANCES;
  const level: ReachedGate = {
    id: 'footing-level',
    from: footing.bottom,
    text: inBothSystems(
      'The dig goes below the bottom of a footing. If that could be a hazard, it is allowed only with underpinning, in stable rock, or with the approval of a registered engineer.',
    ),
    source: 'excavation-rules',
    status: statusOf('excavation-rules'),
  };
  const below = depth.minus(footing.bottom).times(footingLine.value);
  if (below.compare(footing.distance) <= 0) return [level];
  const line: ReachedGate = {
    id: 'footing-line',
    from: footing.bottom,
    text: inBothSystems(
      'The dig goes below a line of 1 to 1 from the bottom of the footing. Stop and ask an engineer.',
    ),
    source: footingLine.source,
    status: statusOf(footingLine.source),
  };
  return [level, line];
}
