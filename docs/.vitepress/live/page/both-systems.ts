import type { StepItem, StepValue } from 'settline';
import { formatFor, isQuantity, type AnyQuantity } from 'settline/units';

/** A quantity as the sheets of both systems print it; one text where both print the same. */
export function inBothSystems(value: AnyQuantity): readonly [us: string, metric: string] {
  return [formatFor(value, 'us'), formatFor(value, 'metric')];
}

/** A sentence in which no line ends inside an amount: `27 1/4 in`. */
export const keptTogether = (sentence: string): string =>
  sentence.replace(/(?<=\d) (?=\d|[a-z%])/g, '\u00a0');

/** A quantity in a sentence: `9 1/4 in (235 mm)`. */
export function both(value: AnyQuantity): string {
  const [us, metric] = inBothSystems(value);
  return us === metric ? us : `${us} (${metric})`;
}

const PLACES = 12;

/** A plain number without the noise of its last digits. */
export const plainNumber = (value: number): string => String(Number(value.toPrecision(PLACES)));

const itemInWords = (item: StepItem): string => {
  if (isQuantity(item)) return both(item);
  return typeof item === 'number' ? plainNumber(item) : item;
};

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);

/** A value of the working in words. */
export const inWords = (value: StepValue): string =>
  isList(value) ? value.map(itemInWords).join('; ') : itemInWords(value);

/** `belowString` as a reader reads it: `below string`. */
export const nameInWords = (name: string): string =>
  name
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase();
