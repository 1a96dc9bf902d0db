import { fault, isSettlineError, type FieldPath, type SettlineError } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { shown } from '../input/shown.js';
import { toQuantity } from '../units/construct.js';
import { isDecimal, type Decimal } from '../units/decimal.js';
import { isQuantity, type AnyQuantity } from '../units/quantity.js';
import { isNear } from './near.js';

/**
 * Holds a part of a saved plan against the same part planned again. It goes no deeper than the plan,
 * whatever was saved. Internal.
 *
 * @throws `PLAN_INVALID` for what has another form, `PLAN_ALTERED` for another value, with the path
 */
export function requireSame(own: unknown, saved: unknown, path: FieldPath): void {
  if (isQuantity(own)) sameQuantity(own, saved, path);
  else if (isDecimal(own)) sameDecimal(own, saved, path);
  else if (Array.isArray(own)) sameList(own, saved, path);
  else if (typeof own === 'object' && own !== null) sameFields(own, saved, path);
  else if (typeof own === 'number') sameNumber(own, saved, path);
  else if (own !== saved) throw altered(own, saved, path);
}

function sameList(own: readonly unknown[], saved: unknown, path: FieldPath): void {
  if (!Array.isArray(saved)) throw invalid(`expected a list [ ... ], got ${shown(saved)}`, path);
  if (saved.length !== own.length) throw altered(own.length, saved.length, [...path, 'length']);
  own.forEach((part, index) => requireSame(part, saved[index], [...path, index]));
}

function sameFields(own: object, saved: unknown, path: FieldPath): void {
  if (!isPlain(saved)) throw invalid(`expected an object { ... }, got ${shown(saved)}`, path);
  for (const [key, part] of Object.entries(own)) {
    if (!Object.hasOwn(saved, key)) throw invalid('missing', [...path, key]);
    requireSame(part, saved[key], [...path, key]);
  }
  const extra = Object.keys(saved).find((key) => !Object.hasOwn(own, key));
  if (extra !== undefined)
    throw invalid('unknown field: a plan has none of this name', [...path, extra]);
}

/** JSON has the digits of a decimal as text. */
function sameDecimal(own: Decimal, saved: unknown, path: FieldPath): void {
  if (typeof saved !== 'string' && !isDecimal(saved)) {
    throw invalid(`expected digits as text, got ${shown(saved)}`, path);
  }
  if (!isNear(own.toNumber(), Number(saved))) throw altered(own.toString(), String(saved), path);
}

function sameNumber(own: number, saved: unknown, path: FieldPath): void {
  if (typeof saved !== 'number') throw invalid(`expected a number, got ${shown(saved)}`, path);
  if (!isNear(own, saved)) throw altered(own, saved, path);
}

function sameQuantity(own: AnyQuantity, saved: unknown, path: FieldPath): void {
  const read = readSaved(own, saved, path);
  if (isNear(own.si.toNumber(), read.si.toNumber())) return;
  throw altered(own.toString(), read.toString(), path);
}

/** A saved quantity is as a rule `{ value, unit }`. */
function readSaved(own: AnyQuantity, saved: unknown, path: FieldPath): AnyQuantity {
  try {
    return toQuantity(own.dimension, saved as never);
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const at = error.code.startsWith('UNIT') ? 'unit' : 'value';
    throw invalid(error.message, isPlain(saved) ? [...path, at] : path);
  }
}

const invalid = (message: string, path: FieldPath): SettlineError =>
  fault('PLAN_INVALID', message, {}, path);

const altered = (own: unknown, saved: unknown, path: FieldPath): SettlineError => {
  const [planned, got] = [shown(own), shown(saved)];
  const message = `the saved plan says ${got}, but its job gives ${planned}. Plan the job again`;
  return fault('PLAN_ALTERED', message, { planned, got }, path);
};
