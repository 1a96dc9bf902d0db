import type { ReadJob } from '../../schema/job-shape.js';
import type { SheetSystem } from './lengths-of-sheet.js';
import type { SheetUnits } from './units-of-sheet.js';

/** What every part of a job sheet is written with. Internal. */
export interface Sheet {
  readonly system: SheetSystem;
  readonly units: SheetUnits;
  /** The job as it was read. */
  readonly job: ReadJob;
}
