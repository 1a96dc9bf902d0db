import type { LengthInput } from '../../units/construct.js';

/** A stake of a string. */
export interface JobStakeInput {
  /** Id on the stake, unique in the job. */
  readonly id: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Elevation of finished grade at the stake. Optional. */
  readonly finish?: LengthInput;
  /** Measured from the string down to the existing surface. Optional. */
  readonly ground?: LengthInput;
}

/** A string over a pavement and its stakes. */
export interface JobStringLineInput {
  /** Short id, unique in the job. */
  readonly id: string;
  /** Id of the pavement that the string serves. */
  readonly pavement: string;
  /** String above finished grade. Default: that of the job. */
  readonly height?: LengthInput;
  /** The line the stakes are checked against. Default: `ends`. */
  readonly reference?: 'ends' | 'best-fit';
  /** The stakes in order along the string, 2 to 500. */
  readonly stakes: readonly JobStakeInput[];
}
