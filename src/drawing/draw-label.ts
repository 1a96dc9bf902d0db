import { fault } from '../errors.js';
import { shown } from '../input/shown.js';
import { custom } from '../input/field.js';
import type { Field } from '../input/shape.js';
import { DRAWING_TEXTS, type DrawingLabelKey } from './label-texts.js';

/** Values of a label: names and figures, printed already. */
export type DrawingLabelValues = Readonly<Record<string, string>>;

/** Writes a label in another language: the text for a key, with its values in place. */
export type DrawingLabel = (key: DrawingLabelKey, values: DrawingLabelValues) => string;

/** The English text of a label. Internal. */
export const englishLabel: DrawingLabel = (key, values) =>
  DRAWING_TEXTS[key].replace(/\{(\w+)\}/g, (_, name: string) => values[name] ?? '');

/** A label by its key; values may be left out where there are none. Internal. */
export type Labeller = (key: DrawingLabelKey, values?: DrawingLabelValues) => string;

/** Writes labels by the function of the caller, and refuses what is no text. Internal. */
export const labeller =
  (label: DrawingLabel): Labeller =>
  (key, values = {}) => {
    const text: unknown = label(key, values);
    if (typeof text === 'string') return text;
    const message = `gives ${shown(text)} for "${key}". Return a text for every key`;
    throw fault('WRONG_TYPE', message, { got: shown(text) }, ['label']);
  };

/** A function that writes labels, as a field. Internal. */
export const labelField: Field<DrawingLabel> = custom((reader, value, path) => {
  if (isLabel(value)) return value;
  reader.fail('WRONG_TYPE', path, `must be a function (key, values) => text, got ${shown(value)}`);
  return englishLabel;
});

const isLabel = (value: unknown): value is DrawingLabel => typeof value === 'function';
