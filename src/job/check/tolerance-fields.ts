import type { BandInput, SetWith } from '../../checks/tolerance.js';
import { custom, object, optional, quantity } from '../../input/field.js';
import { TOLERANCE } from '../../input/ranges.js';
import { shapeOf, type Field } from '../../input/shape.js';
import {
  TOLERANCE_SETS,
  type ToleranceSet,
  type ToleranceSetName,
} from '../../sources/tolerance-sets.js';

/** How far each kind of surface may lie off the plan. */
export interface JobTolerances {
  /** Of the ground that was dug or filled: your own `over` and `under`. Default: none. */
  readonly subgrade?: BandInput;
  /** Of a lift within a layer: your own `over` and `under`. Default: none. */
  readonly lift?: BandInput;
  /** Of the sub-base: a set that limits it, or your own `over` and `under`. Default: none. */
  readonly 'sub-base'?: SetWith<'level'> | BandInput;
  /** Of the base: a set that limits it, or your own `over` and `under`. Default: none. */
  readonly base?: SetWith<'level'> | BandInput;
  /** Of the screeded bedding: your own `over` and `under`. Default: none. */
  readonly bedding?: BandInput;
  /** Of the pavers: a set that limits them, or your own `over` and `under`. Default: none. */
  readonly pavers?: SetWith<'level'> | BandInput;
}

/** How thick each layer may be off the plan. */
export interface JobThicknessTolerances {
  /** Of the sub-base: your own `over` and `under`. Default: its thickness is not checked. */
  readonly 'sub-base'?: BandInput;
  /** Of the base: a set, or your own `over` and `under`. Default: its thickness is not checked. */
  readonly base?: SetWith<'thickness'> | BandInput;
  /** Of the bedding: a set, or your own `over` and `under`. Default: its thickness is not checked. */
  readonly bedding?: SetWith<'thickness'> | BandInput;
}

/** A tolerance as it is passed on: the name of a set that has it, or the caller's own. Internal. */
export type Tolerance<K extends 'level' | 'thickness'> = SetWith<K> | BandInput;

const BAND = object(
  shapeOf<BandInput>()({ over: quantity(TOLERANCE), under: quantity(TOLERANCE) }),
);
const NAMES = Object.keys(TOLERANCE_SETS) as [ToleranceSetName, ...ToleranceSetName[]];

/** A tolerance: text is the name of a set that prints it, anything else the caller's own. */
const tolerance = <K extends 'level' | 'thickness'>(what: K, of: string): Field<Tolerance<K>> =>
  custom((reader, value, path) => {
    if (typeof value !== 'string') return BAND.read(reader, value, path);
    const before = reader.faults();
    const name = reader.choice(value, path, NAMES);
    if (reader.faults() === before && !prints(TOLERANCE_SETS[name], what, of)) {
      const message = `"${name}" has no limit for the ${what} of the ${of}. Choose another set, or give your own limits`;
      reader.fail('LIMIT_NOT_SET', path, message, { set: name });
    }
    return name as SetWith<K>;
  });

function prints(set: ToleranceSet, what: 'level' | 'thickness', of: string): boolean {
  const limits: object | undefined = set[what];
  return limits !== undefined && Object.hasOwn(limits, of);
}

const level = (of: string) => optional(tolerance('level', of));
const thickness = (of: string) => optional(tolerance('thickness', of));

/** The tolerances of levels. Internal. */
export const TOLERANCES = shapeOf<JobTolerances>()({
  subgrade: level('subgrade'),
  lift: level('lift'),
  'sub-base': level('sub-base'),
  base: level('base'),
  bedding: level('bedding'),
  pavers: level('pavers'),
});

/** The tolerances of thicknesses. Internal. */
export const THICKNESSES = shapeOf<JobThicknessTolerances>()({
  'sub-base': thickness('sub-base'),
  base: thickness('base'),
  bedding: thickness('bedding'),
});
