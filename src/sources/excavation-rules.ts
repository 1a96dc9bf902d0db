import {
  printed,
  printedNumber,
  type ReferenceNumber,
  type ReferenceValue,
} from './reference-value.js';
import { inBothSystems, type SystemText } from './system-text.js';

/**
 * Soil as 29 CFR 1926 Subpart P names it. Only a competent person classifies soil; unclassified
 * ground is sloped as type C (1926.652(b)(1)).
 */
export const SOIL_TYPES = Object.freeze(['stable-rock', 'A', 'B', 'C', 'not-classified'] as const);
/** A soil of {@link SOIL_TYPES}. */
export type SoilType = (typeof SOIL_TYPES)[number];

/**
 * Steepest allowed sides, run over rise, to 20 ft deep. Sources: `excavation-slopes` (Table B-1),
 * `excavation-rules` (unclassified ground).
 */
export const EXCAVATION_SLOPES: Readonly<Record<SoilType, ReferenceNumber>> = Object.freeze({
  'stable-rock': printedNumber('0', 'excavation-slopes'),
  A: printedNumber('0.75', 'excavation-slopes'),
  B: printedNumber('1', 'excavation-slopes'),
  C: printedNumber('1.5', 'excavation-slopes'),
  'not-classified': printedNumber('1.5', 'excavation-rules'),
});

/**
 * Type A open for a short time may be steeper, in a shallower dig. Sources: `excavation-numbers`,
 * `excavation-definitions` (the time).
 */
export const SHORT_TERM_SLOPE = Object.freeze({
  soil: 'A',
  runOverRise: printedNumber('0.5', 'excavation-numbers'),
  maximumDepth: printed('12', 'ft', 'excavation-numbers'),
  maximumTime: printed('24', 'h', 'excavation-definitions'),
} as const);

/** Distances that the rules set beside an open dig. */
export const EXCAVATION_DISTANCES = Object.freeze({
  /** Setback of spoil and gear from the edge. */
  spoilSetBack: printed('2', 'ft', 'excavation-rules'),
  /** Maximum distance to a ladder or ramp in a trench. */
  egressWithin: printed('25', 'ft', 'excavation-rules'),
  /** Height of a ladder above the edge. */
  ladderAbove: printed('3', 'ft', 'excavation-numbers'),
  /**
   * Run over rise of the line from the bottom of a footing that a dig keeps outside of. Printed for
   * pipe trenches beside a footing; its use for a paving dig is common practice.
   */
  footingLine: printedNumber('1', 'plumbing-code'),
});

/** The depths at which rules apply. */
export type DepthGateId = 'egress' | 'atmosphere' | 'protective-system' | 'walkway' | 'engineer';

/** A depth at which a rule applies. */
export interface DepthGate {
  /** The depth from which the rule applies. */
  readonly depth: ReferenceValue;
  /** True if the rule says "or more", false if it says "more than". */
  readonly fromDepthOn: boolean;
  /** The rule in words. */
  readonly text: SystemText;
}

const gate = (
  depth: ReferenceValue,
  fromDepthOn: boolean,
  text: string | SystemText,
): DepthGate => {
  const inWords = typeof text === 'string' ? inBothSystems(text) : text;
  return Object.freeze({ depth, fromDepthOn, text: Object.freeze(inWords) });
};

/** Depth gates of 29 CFR 1926 Subpart P. Source: `excavation-rules`, `excavation-numbers`. */
export const DEPTH_GATES: Readonly<Record<DepthGateId, DepthGate>> = Object.freeze({
  egress: gate(printed('4', 'ft', 'excavation-rules'), true, {
    us: 'A ladder, ramp or stair in the trench, no more than 25 ft away from anyone in it.',
    metric: 'A ladder, ramp or stair in the trench, no more than 7.62 m away from anyone in it.',
  }),
  atmosphere: gate(
    printed('4', 'ft', 'excavation-numbers'),
    false,
    'Test the air before anyone goes in, if bad air can be expected.',
  ),
  'protective-system': gate(
    printed('5', 'ft', 'excavation-rules'),
    true,
    'Slope, bench, shore or shield the sides, unless the dig is entirely in stable rock.',
  ),
  walkway: gate(
    printed('6', 'ft', 'excavation-numbers'),
    true,
    'Guardrails on walkways over the dig.',
  ),
  engineer: gate(
    printed('20', 'ft', 'excavation-rules'),
    false,
    'A registered professional engineer designs the protection; the slopes of the table end here.',
  ),
});
