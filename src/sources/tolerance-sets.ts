import type { SourceId } from './catalogue.js';
import {
  printed,
  printedNumber,
  type ReferenceNumber,
  type ReferenceValue,
} from './reference-value.js';
import { PAVER_TOLERANCES } from './surface-tolerances.js';

/** A gap under a straightedge or string of a length. */
export interface OverLength {
  /** Maximum gap or distance. */
  readonly maximum: ReferenceValue;
  /** Length of the straightedge or string. */
  readonly over: ReferenceValue;
}

/** Tolerance above and below the plan. */
export interface OverAndUnder {
  /** Tolerance above the plan. */
  readonly over: ReferenceValue;
  /** Tolerance below the plan. */
  readonly under: ReferenceValue;
}

/** A minimum and a maximum, either or both. */
export interface MinimumAndMaximum {
  /** Minimum. */
  readonly minimum?: ReferenceValue;
  /** Maximum. */
  readonly maximum?: ReferenceValue;
}

/**
 * The tolerances of one publication, or of the clauses of one contract. A tolerance that it does
 * not print is absent; sets are never merged.
 */
export interface ToleranceSet {
  /** Where it is printed. */
  readonly source: SourceId;
  /** Note on the set. */
  readonly note?: string;
  /** Gap under a straightedge. */
  readonly flatness?: Readonly<Partial<Record<'base' | 'bedding' | 'pavers', OverLength>>>;
  /** Level of a surface against the plan. */
  readonly level?: Readonly<Partial<Record<'sub-base' | 'base' | 'pavers', OverAndUnder>>>;
  /** Thickness of a layer. */
  readonly thickness?: Readonly<Partial<Record<'base' | 'bedding', OverAndUnder>>>;
  /** Difference of level between neighbouring pavers. */
  readonly lippage?: MinimumAndMaximum;
  /** Paver over a drain or grate. */
  readonly lippageAtDrain?: MinimumAndMaximum;
  /** Paver over a drain on an accessible route. */
  readonly lippageAtAccessibleDrain?: MinimumAndMaximum;
  /** Width of the joints. */
  readonly joint?: MinimumAndMaximum;
  /** Bond lines off a string. */
  readonly bondLine?: OverLength;
  /** Slope of the surface. */
  readonly slope?: MinimumAndMaximum;
  /** Dry density over the maximum dry density of the named test, in percent. */
  readonly compaction?: {
    /** Minimum percent of the maximum dry density. */
    readonly minimum: ReferenceNumber;
    /** The Proctor test it refers to. */
    readonly test: 'standard' | 'modified';
  };
}

const mm = (value: string, source: SourceId) => printed(value, 'mm', source);
const inch = (value: string, source: SourceId) => printed(value, 'in', source);
const percent = (value: string, source: SourceId) => printed(value, 'percent', source);
const overTenFeet = (maximum: ReferenceValue): OverLength =>
  Object.freeze({ maximum, over: printed('10', 'ft', maximum.source) });
const overThreeMetres = (maximum: ReferenceValue): OverLength =>
  Object.freeze({ maximum, over: printed('3', 'm', maximum.source) });
const overFiftyFeet = (maximum: ReferenceValue): OverLength =>
  Object.freeze({ maximum, over: printed('50', 'ft', maximum.source) });
const band = (over: ReferenceValue, under: ReferenceValue): OverAndUnder =>
  Object.freeze({ over, under });
const between = (minimum: ReferenceValue, maximum: ReferenceValue): MinimumAndMaximum =>
  Object.freeze({ minimum, maximum });
const upTo = (maximum: ReferenceValue): MinimumAndMaximum => Object.freeze({ maximum });
const from = (minimum: ReferenceValue): MinimumAndMaximum => Object.freeze({ minimum });

const GUIDE = 'paver-tolerances';
const guideCompaction = Object.freeze({
  minimum: printedNumber('98', GUIDE),
  test: 'standard',
} as const);

/**
 * Named sets of construction tolerances. Choose one; there is no default. If a publication prints
 * inches and millimetres that are rounded separately, each edition is its own set.
 */
export const TOLERANCE_SETS = Object.freeze({
  'paver-guide-in': Object.freeze({
    source: GUIDE,
    flatness: Object.freeze({
      base: overTenFeet(PAVER_TOLERANCES.baseSurfacePer10ft),
      pavers: overTenFeet(PAVER_TOLERANCES.surfaceFlatnessPer10ft),
    }),
    thickness: Object.freeze({
      base: band(PAVER_TOLERANCES.baseThicknessOver, PAVER_TOLERANCES.baseThicknessUnder),
    }),
    lippage: upTo(PAVER_TOLERANCES.maximumLippage),
    lippageAtDrain: between(inch('0.125', GUIDE), inch('0.375', GUIDE)),
    joint: between(PAVER_TOLERANCES.minimumJoint, PAVER_TOLERANCES.maximumJoint),
    bondLine: overFiftyFeet(PAVER_TOLERANCES.bondLinePer50ft),
    slope: from(PAVER_TOLERANCES.minimumSlope),
    compaction: guideCompaction,
  }),
  'paver-guide-mm': Object.freeze({
    source: GUIDE,
    note: 'The guide prints the bond line over 50 ft or 16 m; 50 ft (15.24 m) is used here.',
    flatness: Object.freeze({
      base: overThreeMetres(mm('10', GUIDE)),
      pavers: overThreeMetres(mm('10', GUIDE)),
    }),
    thickness: Object.freeze({ base: band(mm('20', GUIDE), mm('13', GUIDE)) }),
    lippage: upTo(mm('3', GUIDE)),
    lippageAtDrain: between(mm('3', GUIDE), mm('10', GUIDE)),
    joint: between(mm('2', GUIDE), mm('5', GUIDE)),
    bondLine: overFiftyFeet(mm('13', GUIDE)),
    slope: from(PAVER_TOLERANCES.minimumSlope),
    compaction: guideCompaction,
  }),
  'permeable-guide': Object.freeze({
    source: 'permeable-tolerances',
    flatness: Object.freeze({
      bedding: overTenFeet(inch('0.375', 'permeable-tolerances')),
      pavers: overTenFeet(inch('0.375', 'permeable-tolerances')),
    }),
    lippage: upTo(inch('0.125', 'permeable-tolerances')),
    lippageAtDrain: between(
      inch('0.125', 'permeable-tolerances'),
      inch('0.375', 'permeable-tolerances'),
    ),
    lippageAtAccessibleDrain: between(
      inch('0.125', 'permeable-tolerances'),
      inch('0.25', 'permeable-tolerances'),
    ),
    joint: between(inch('0.25', 'permeable-tolerances'), inch('0.5', 'permeable-tolerances')),
    bondLine: overFiftyFeet(inch('0.5', 'permeable-tolerances')),
    slope: between(percent('0', 'permeable-tolerances'), percent('5', 'permeable-tolerances')),
    note: 'The guide says that slopes are typically 0 to 5%: a usual range, not a limit.',
  }),
  'ufgs-02780-in': Object.freeze({
    source: 'ufgs-02780',
    joint: between(inch('0.0625', 'ufgs-02780'), inch('0.25', 'ufgs-02780')),
  }),
  'ufgs-02780-mm': Object.freeze({
    source: 'ufgs-02780',
    joint: between(mm('2', 'ufgs-02780'), mm('6', 'ufgs-02780')),
  }),
  'spec-526-in': Object.freeze({
    source: 'spec-526',
    flatness: Object.freeze({ pavers: overTenFeet(inch('0.375', 'spec-526')) }),
    lippage: upTo(inch('0.125', 'spec-526')),
  }),
  'spec-526-mm': Object.freeze({
    source: 'spec-526',
    flatness: Object.freeze({ pavers: overTenFeet(mm('10', 'spec-526')) }),
    lippage: upTo(mm('3', 'spec-526')),
  }),
  'irc-sp-63-2004': Object.freeze({
    source: 'irc-sp-63-2004',
    flatness: Object.freeze({ base: overThreeMetres(mm('10', 'irc-sp-63-2004')) }),
    level: Object.freeze({
      'sub-base': band(mm('0', 'irc-sp-63-2004'), mm('20', 'irc-sp-63-2004')),
      base: band(mm('10', 'irc-sp-63-2004'), mm('0', 'irc-sp-63-2004')),
      pavers: band(mm('10', 'irc-sp-63-2004'), mm('10', 'irc-sp-63-2004')),
    }),
    joint: upTo(mm('4', 'irc-sp-63-2004')),
  }),
  'irc-sp-63-2018': Object.freeze({
    source: 'irc-sp-63-2018',
    thickness: Object.freeze({
      bedding: band(mm('5', 'irc-sp-63-2018'), mm('5', 'irc-sp-63-2018')),
    }),
  }),
  'block-laying-clauses': Object.freeze({
    source: 'laying-clause',
    thickness: Object.freeze({
      bedding: band(mm('5', 'bedding-sand-clause'), mm('5', 'bedding-sand-clause')),
    }),
    lippage: upTo(mm('3', 'joint-sand-clause')),
    joint: between(mm('2', 'laying-clause'), mm('4', 'laying-clause')),
  }),
} as const satisfies Record<string, ToleranceSet>);

/** The name of a set of {@link TOLERANCE_SETS}. */
export type ToleranceSetName = keyof typeof TOLERANCE_SETS;
