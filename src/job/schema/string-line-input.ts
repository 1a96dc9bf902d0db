import type { ForceInput, LengthInput, LineWeightInput } from '../../units/construct.js';

/** A stake of the job. */
export interface JobStakeInput {
  /** Id on the stake, unique in the job. */
  readonly id: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Elevation of finished grade at the stake. Optional. */
  readonly finish?: LengthInput;
  /** Location of the `finish` level: the stake, or the edge of the paving beside it. Default: `stake`. */
  readonly finishAt?: 'stake' | 'edge';
  /** Depth from the string to the existing surface, as measured. Optional. */
  readonly ground?: LengthInput;
  /** Id of the string that `ground` was measured from, if the stake serves strings of different heights. Default: its only height. */
  readonly groundFrom?: string;
  /** Surface that `ground` was measured to. Default: old paving if the job has any there, else soil. */
  readonly groundOn?: 'soil' | 'old-paving';
}

/** The string itself, to work out its sag. */
export interface JobStringInput {
  /** Horizontal tension in the string. */
  readonly tension: ForceInput;
  /** Weight per length of the string as it hangs. */
  readonly weightPerLength: LineWeightInput;
}

/** A string over a pavement and its stakes. */
export interface JobStringLineInput {
  /** Short id, unique in the job. */
  readonly id: string;
  /** Id of the pavement that the string serves. */
  readonly pavement: string;
  /** Height of the string above finished grade. Default: the height of the job. */
  readonly height?: LengthInput;
  /** Line to check the stakes against. Default: `ends`. */
  readonly reference?: 'ends' | 'best-fit';
  /** Ids of its stakes in order along the string, 2 to 10 000. A stake may serve several strings. */
  readonly stakes: readonly string[];
}
