import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { statusOf, type SourceId } from '../../sources/catalogue.js';
import type { SourceStatus } from '../../sources/source.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import {
  DEPTH_GATES,
  EXCAVATION_DISTANCES,
  EXCAVATION_SLOPES,
  SHORT_TERM_SLOPE,
  SOIL_TYPES,
  type DepthGateId,
  type SoilType,
} from '../../sources/excavation-rules.js';
import type { ReferenceNumber } from '../../sources/reference-value.js';
import type { LengthInput, TimeInput } from '../../units/construct.js';
import type { Length, Time } from '../../units/quantity.js';
import { given, withWorking, type Worked } from '../../working.js';
import { DEPTH, DEPTH_OR_NONE, LENGTH_OR_NONE, TIME } from '../limits.js';

/** A rule that this dig comes under. */
export interface ReachedGate {
  readonly id:
    | DepthGateId
    | 'competent-person'
    | 'spoil-set-back'
    | 'no-system'
    | 'footing-level'
    | 'footing-line';
  /** The figure that the rule names; null for a rule without one. */
  readonly from: Length | null;
  readonly text: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
}

/** The sides of an open dig and the rules it comes under. */
export interface ExcavationGates extends Worked {
  /** Run over rise of the steepest side that the table allows; null below the end of the table. */
  readonly runOverRise: string | null;
  /** From the foot of the side out to the top edge, at that slope; null below the end of the table. */
  readonly daylightOffset: Length | null;
  /** True where the table gives no slope: an engineer designs the sides. */
  readonly beyondTable: boolean;
  /** Gates that are reached. A gate that is not listed is no promise. */
  readonly gates: readonly ReachedGate[];
  readonly decides: string;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Rules of 29 CFR 1926 Subpart P that a dig of a depth comes under, and how far the top edge lies out
 * if the sides are sloped: `offset = depth x run / rise`. It lists gates and judges nothing: a
 * competent person on the site decides, and other rules hold elsewhere.
 *
 * @param options.depth - deepest point of the dig [length]
 * @param options.soil - `stable-rock`, `A`, `B`, `C` as a competent person has classified it, else
 *   `not-classified`, which is sloped as C
 * @param options.spoilDistance - from the edge to spoil and gear [length], if it is known
 * @param options.openTime - how long the dig stays open [time]; lets soil A stand steeper to 24 h
 * @param options.footing - `distance` from the foot of the dig to a footing and depth of its
 *   `bottom` [length]
 * @returns slope and offset of the top edge, the gates reached, who decides; cautions
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source excavation-rules
 * @source excavation-numbers
 * @example
 * const dig = excavationGates({ depth: '1.3 m', soil: 'C', spoilDistance: '1 m' });
 * dig.daylightOffset?.to('m').toString() //=> '1.95'
 * dig.gates.map(({ id }) => id) //=> ['competent-person', 'egress', 'atmosphere', 'no-system']
 */
export function excavationGates(options: {
  readonly depth: LengthInput;
  readonly soil: SoilType;
  readonly spoilDistance?: LengthInput;
  readonly openTime?: TimeInput;
  readonly footing?: { readonly distance: LengthInput; readonly bottom: LengthInput };
}): ExcavationGates {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH);
  const soil = reader.choice(fields['soil'], ['soil'], SOIL_TYPES);
  const spoil =
    fields['spoilDistance'] === undefined
      ? undefined
      : reader.quantity('length', fields['spoilDistance'], ['spoilDistance'], LENGTH_OR_NONE);
  const openTime =
    fields['openTime'] === undefined
      ? undefined
      : reader.quantity('time', fields['openTime'], ['openTime'], TIME);
  const footing =
    fields['footing'] === undefined
      ? undefined
      : readFooting(reader, fields['footing'], ['footing']);
  reader.finish();

  const beyondTable = isReached('engineer', depth);
  const slope = slopeFor(soil, depth, openTime);
  const offset = depth.times(slope.value);
  const found = {
    runOverRise: beyondTable ? null : slope.value,
    daylightOffset: beyondTable ? null : offset,
    beyondTable,
    gates: [
      COMPETENT_PERSON,
      ...spoilGate(spoil),
      ...depthGates(depth, soil),
      ...footingGates(depth, footing),
    ],
    decides: DECIDES,
    notes: NOTES,
    cautions: cautionsFor(
      'excavation',
      'utilities',
      ...(footing === undefined ? [] : (['structure'] as const)),
    ),
  };
  return withWorking(found, () => [
    {
      title: 'Top edge of a sloped side',
      formula: 'x = e h',
      given: [given('e', 'depth', depth), given('h', `run over rise, soil ${soil}`, slope.value)],
      result: given('x', beyondTable ? 'offset (table ends above this depth)' : 'offset', offset),
      source: slope.source,
    },
  ]);
}

const DECIDES =
  'A competent person on the site classifies the soil and decides on sides, access and spoil, before every shift and after rain. This list is a reminder and approves nothing.';
const NOTES: readonly string[] = Object.freeze([
  'Soil dug before, wet, layered toward the dig or shaken by traffic and plates is weaker than it looks.',
  'The slopes are for simple sides without loads beside them; trees, walls, slabs and trucks near the edge need more.',
]);

const COMPETENT_PERSON: ReachedGate = Object.freeze({
  id: 'competent-person',
  from: null,
  text: 'A competent person inspects the dig before each shift, after rain and whenever anything changes.',
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

/** A short-term dig in soil A may stand steeper; every other case goes by the table. */
function slopeFor(soil: SoilType, depth: Length, openTime: Time | undefined): ReferenceNumber {
  const { mostDepth, mostTime, runOverRise } = SHORT_TERM_SLOPE;
  const isShort =
    openTime !== undefined &&
    openTime.compare(referenceQuantity('time', mostTime)) <= 0 &&
    depth.compare(referenceQuantity('length', mostDepth)) <= 0;
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

function noSystemGate(): ReachedGate {
  const figure = DEPTH_GATES['protective-system'].depth;
  return {
    id: 'no-system',
    from: referenceQuantity('length', figure),
    text: 'Under 5 ft the sides may be left without protection only where a competent person has looked at the ground and found no sign that it could cave in.',
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
      text: 'Keep spoil, stone and gear at least 2 ft back from the edge, or hold them back.',
      source: figure.source,
      status: statusOf(figure.source),
    },
  ];
}

interface Footing {
  readonly distance: Length;
  readonly bottom: Length;
}

function readFooting(reader: Reader, value: unknown, path: FieldPath): Footing {
  const fields = reader.object(value, path);
  return {
    distance: reader.quantity('length', fields['distance'], [...path, 'distance'], LENGTH_OR_NONE),
    bottom: reader.quantity('length', fields['bottom'], [...path, 'bottom'], DEPTH_OR_NONE),
  };
}

/** A dig that goes below the bottom of a footing (1926.651(i)(2)), or below 1 to 1 from it. */
function footingGates(depth: Length, footing: Footing | undefined): ReachedGate[] {
  if (footing === undefined || depth.compare(footing.bottom) <= 0) return [];
  const { footingLine } = EXCAVATION_DISTANCES;
  const level: ReachedGate = {
    id: 'footing-level',
    from: footing.bottom,
    text: 'The dig goes below the bottom of a footing: where that could be a hazard it is allowed only with underpinning, in stable rock, or where a registered engineer has approved it.',
    source: 'excavation-rules',
    status: statusOf('excavation-rules'),
  };
  const below = depth.minus(footing.bottom).times(footingLine.value);
  if (below.compare(footing.distance) <= 0) return [level];
  const line: ReachedGate = {
    id: 'footing-line',
    from: footing.bottom,
    text: 'The dig goes below a line of 1 to 1 from the bottom of the footing: stop and ask an engineer.',
    source: footingLine.source,
    status: statusOf(footingLine.source),
  };
  return [level, line];
}
