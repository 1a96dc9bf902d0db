import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Area, Length } from '../units/quantity.js';
import { UNIT_SIDE } from './limits.js';

/** The plan of a unit: its own size, without joints. Long side first. */
export interface UnitInput {
  readonly length: LengthInput;
  readonly width: LengthInput;
}

/** A unit that has been read. Internal. */
export interface Unit {
  readonly length: Length;
  readonly width: Length;
}

/** Reads the plan of a unit. Internal. */
export function readUnit(reader: Reader, value: unknown, path: FieldPath = ['unit']): Unit {
  const fields = reader.object(value, path);
  return {
    length: reader.quantity('length', fields['length'], [...path, 'length'], UNIT_SIDE),
    width: reader.quantity('length', fields['width'], [...path, 'width'], UNIT_SIDE),
  };
}

/** What a unit takes up in the pattern: its own size and one joint each way. Internal. */
export interface Module {
  readonly length: Length;
  readonly width: Length;
  readonly area: Area;
}

/** The module of a unit: size plus joint, each way. Internal. */
export function moduleOf(unit: Unit, joint: Length): Module {
  const [length, width] = [unit.length.plus(joint), unit.width.plus(joint)];
  return { length, width, area: length.times(width) };
}
