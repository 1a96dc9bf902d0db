import { object } from '../../input/field.js';
import type { Field, Shape, Values } from '../../input/shape.js';

/** A field for a part of a job, from the name of its interface and its shape. Internal. */
export const part = <S extends Shape>(name: string, shape: S): Field<Values<S>> =>
  object(shape, undefined, name);
