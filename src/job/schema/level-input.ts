import type { LengthInput, SlopeInput } from '../../units/construct.js';

/** A point with a level that the finished surface must meet. */
export interface JobFixedLevelInput {
  /** Name of the thing that cannot move, such as slab, sill or street. Default: its number. */
  readonly name?: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Elevation; or give `levelled`. */
  readonly elevation?: LengthInput;
  /** Point of the level book that gives this level; or give `elevation`. */
  readonly levelled?: string;
  /** True if a plane must meet this level exactly. Default: false. */
  readonly fixed?: boolean;
}

/** Finished grade by levels that cannot move, instead of stake by stake. */
export interface JobGradeInput {
  /** Type of surface: a line of levels, a plane, or a surface warped between four corners. */
  readonly kind: 'line' | 'plane' | 'warped';
  /** Levels to meet: two or more for a line, three or more for a plane, four for a warped surface. */
  readonly levels: readonly JobFixedLevelInput[];
  /** Cross slope of a line: the slope square to it, + rising to the left. Default: level. */
  readonly crossSlope?: SlopeInput;
}

/** The benchmark of the set-up. */
export interface JobBenchmarkInput {
  /** Name of the mark. Optional. */
  readonly name?: string;
  /** Elevation; or give `levelled`. */
  readonly elevation?: LengthInput;
  /** Point of the level book that gives this level; or give `elevation`. */
  readonly levelled?: string;
}

/** The second reading on the benchmark, at the end of the day. */
export interface JobClosingInput {
  /** Reading on the benchmark at the end of the day. */
  readonly reading: LengthInput;
  /** Maximum difference from the backsight. */
  readonly tolerance: LengthInput;
}

/** The level as set up for the day: one set-up. */
export interface JobLevellingInput {
  /** Mark from which heights are measured. */
  readonly benchmark: JobBenchmarkInput;
  /** Reading on the benchmark. */
  readonly backsight: LengthInput;
  /** Longest reading on the rod. Optional. */
  readonly rodLength?: LengthInput;
  /** Check on the benchmark at the end of the day. Optional. */
  readonly closing?: JobClosingInput;
}

/** A row of a level book. */
export interface JobLevelRowInput {
  /** Name of the point the rod was held on. */
  readonly point: string;
  /** Backsight: the first reading of a set-up. Optional. */
  readonly back?: LengthInput;
  /** Intermediate sight. Optional. */
  readonly intermediate?: LengthInput;
  /** Foresight: the last reading of a set-up. Optional. */
  readonly fore?: LengthInput;
  /** Distance from the start, along the line of levels. Optional. */
  readonly distance?: LengthInput;
}

/** A rule for the allowable misclosure: k times the square root of n. */
export interface JobMisclosureRuleInput {
  /** Constant k of the rule. */
  readonly k: LengthInput;
  /** Distance that counts as one in n. Default: n is the number of set-ups. */
  readonly per?: LengthInput;
}

/** A level book, as written on site. */
export interface JobLevelBookInput {
  /** Elevation of the starting mark. */
  readonly start: LengthInput;
  /** Rows in the order they were read, 1 to 2000. */
  readonly rows: readonly JobLevelRowInput[];
  /** Known elevation of the closing mark. Optional. */
  readonly known?: LengthInput;
  /** Allowable misclosure; or give `rule`. */
  readonly allowable?: LengthInput;
  /** Rule for the allowable misclosure; or give `allowable`. */
  readonly rule?: JobMisclosureRuleInput;
  /** Basis on which the misclosure is spread. Default: `set-ups`. */
  readonly adjustBy?: 'set-ups' | 'distance';
}
