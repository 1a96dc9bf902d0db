import { fault } from '../errors.js';
import { shown } from '../input/shown.js';
import { custom } from '../input/field.js';
import type { Field } from '../input/shape.js';
import type { DrawingLabelKey } from './label-texts.js';

/** Values of a label: names and figures, printed already. */
export type DrawingLabelValues = Readonly<Record<string, string>>;

/** Writes a label in another language: the text for a key, with its values in place. */
export type DrawingLabel = (key: DrawingLabelKey, values: DrawingLabelValues) => string;

/** English texts of labels: those of one drawing, so that it carries no others. Internal. */
export type LabelTexts = Readonly<Partial<Record<DrawingLabelKey, string>>>;

/** The English text of a label. */
const englishText = (texts: LabelTexts, key: DrawingLabelKey, values: DrawingLabelValues): string =>
  (texts[key] ?? '').replace(/\{(\w+)\}/g, (_, name: string) => values[name] ?? '');

/** A label by its key; values may be left out where there are none. Internal. */
export type Labeller = (key: DrawingLabelKey, values?: DrawingLabelValues) => string;

/** Keys of labels with a number, which have another text for one. */
type CountedKey = {
  [K in DrawingLabelKey]: `${K}-one` extends DrawingLabelKey ? K : never;
}[DrawingLabelKey];

/** A label with a number, in the singular for one. Internal. */
export const countLabel = (label: Labeller, key: CountedKey, count: number): string =>
  label(count === 1 ? `${key}-one` : key, { count: `${count}` });

/**
 * Writes labels by the function of the caller, and refuses what is no text; in English where there is
 * no function. Internal.
 */
export const labeller =
  (label: DrawingLabel | undefined, texts: LabelTexts): Labeller =>
  (key, values = {}) => {
    if (label === undefined) return englishText(texts, key, values);
    const text: unknown = label(key, values);
    if (typeof text === 'string') return text;
    const message = `gives ${shown(text)} for "${key}". Return a text for every key`;
    throw fault('WRONG_TYPE', message, { got: shown(text) }, ['label']);
  };

/** A function that writes labels, as a field. Internal. */
export const labelField: Field<DrawingLabel> = custom((reader, value, path) => {
  if (isLabel(value)) return value;
  reader.fail('WRONG_TYPE', path, `must be a function (key, values) => text, got ${shown(value)}`);
  return () => '';
});

const isLabel = (value: unknown): value is DrawingLabel => typeof value === 'function';
