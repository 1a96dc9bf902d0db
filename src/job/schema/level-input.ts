import type { LengthInput, SlopeInput } from '../../units/construct.js';

/** A point with a level that the finished surface has to meet. */
export interface JobFixedLevelInput {
  /** What cannot move: slab, sill, street. Default: its number. */
  readonly name?: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Elevation; or give `levelled`. */
  readonly elevation?: LengthInput;
  /** The point of the level book whose level it takes. */
  readonly levelled?: string;
  /** True where a plane must meet it exactly. Default: false. */
  readonly fixed?: boolean;
}

/** Finished grade by levels that cannot move, instead of stake by stake. */
export interface JobGradeInput {
  /** A line of levels, a plane, or a surface warped between four corners. */
  readonly kind: 'line' | 'plane' | 'warped';
  /** The levels: two or more for a line, three or more for a plane, four for a warped surface. */
  readonly levels: readonly JobFixedLevelInput[];
  /** Of a line: slope square to it, + rising to the left. Default: level. */
  readonly crossSlope?: SlopeInput;
}

/** The mark that the instrument is set up from. */
export interface JobBenchmarkInput {
  /** Name of the mark. Optional. */
  readonly name?: string;
  /** Elevation; or give `levelled`. */
  readonly elevation?: LengthInput;
  /** The point of the level book whose level it takes. */
  readonly levelled?: string;
}

/** The benchmark read again at the end of the day. */
export interface JobClosingInput {
  /** Reading on the benchmark at the end of the day. */
  readonly reading: LengthInput;
  /** By how much it may differ from the backsight. */
  readonly tolerance: LengthInput;
}

/** The instrument as it stands: one set-up for the day. */
export interface JobLevellingInput {
  /** The mark that heights count from. */
  readonly benchmark: JobBenchmarkInput;
  /** Reading on the benchmark. */
  readonly backsight: LengthInput;
  /** Longest reading of the rod. Optional. */
  readonly rodLength?: LengthInput;
  /** The check on the benchmark at the end of the day. Optional. */
  readonly closing?: JobClosingInput;
}

/** A row of a level book. */
export interface JobLevelRowInput {
  /** What the rod stood on. */
  readonly point: string;
  /** Backsight: the first reading of a set-up. Optional. */
  readonly back?: LengthInput;
  /** Intermediate sight. Optional. */
  readonly intermediate?: LengthInput;
  /** Foresight: the last reading of a set-up. Optional. */
  readonly fore?: LengthInput;
  /** From the start, along the levels. Optional. */
  readonly distance?: LengthInput;
}

/** An allowable misclosure by the rule k times the root of n. */
export interface JobMisclosureRuleInput {
  /** Constant k of the rule. */
  readonly k: LengthInput;
  /** Distance that counts as one. Default: a set-up counts as one. */
  readonly per?: LengthInput;
}

/** A level book as it was kept. */
export interface JobLevelBookInput {
  /** Elevation of the starting mark. */
  readonly start: LengthInput;
  /** The rows in the order they were read, 1 to 2000. */
  readonly rows: readonly JobLevelRowInput[];
  /** Elevation of the closing mark. Optional. */
  readonly known?: LengthInput;
  /** Allowable misclosure; or give `rule`. */
  readonly allowable?: LengthInput;
  /** Allowable misclosure by a rule; or give `allowable`. */
  readonly rule?: JobMisclosureRuleInput;
  /** How the misclosure is spread. Default: `set-ups`. */
  readonly adjustBy?: 'set-ups' | 'distance';
}
