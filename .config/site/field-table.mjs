// Fields of a type as a table, with the unit and the range that the text of each begins with.
import { cell, summaryOf } from './comment-text.mjs';
import { typeText } from './type-text.mjs';

/** The fields of a type that is an object, or a list of objects; undefined for other types. */
function fieldsWithin(type) {
  if (type?.type === 'typeOperator') return fieldsWithin(type.target);
  if (type?.type === 'array') return fieldsWithin(type.elementType);
  if (type?.type !== 'reflection') return undefined;
  return type.declaration.children;
}

/** What a type is called in a table: the fields of an object have rows of their own. */
function shortText(type) {
  if (fieldsWithin(type) === undefined) return typeText(type);
  return typeText(type).replace(/\{.*\}/s, 'object');
}

/** Takes `[unit], range.` out of the text of a field. */
export function unitAndText(text) {
  const match = /^(.*?)\s*\[([^\]]+)\](?!\()(,[^.;]*(?:\.\d[^.;]*)*)?([.;]?\s*.*)$/s.exec(text);
  if (match === null) return { unit: '', text };
  const [, before, unit, range = '', after] = match;
  return { unit: `${unit}${range}`, text: `${before}${after}` };
}

/** What a quantity measures, for fields whose text gives no unit. */
const MEASURES =
  /^(?:readonly )?\(?(Length|Area|Volume|Mass|Density|Slope|Angle|Pressure|Force|Duration|Speed)\b/;
const measureOf = (shown) => MEASURES.exec(shown)?.[1].toLowerCase() ?? '';

function rowsOf(fields, within = '') {
  return fields.flatMap((field) => {
    const name = `${within}${field.name}`;
    const type = field.type ?? field.getSignature?.type;
    const { unit, text } = unitAndText(summaryOf(field.comment ?? field.signatures?.[0]?.comment));
    const optional = field.flags.isOptional ? ', optional' : '';
    const shown = field.signatures
      ? typeText({ type: 'reflection', declaration: field })
      : shortText(type);
    const row = `| \`${name}\`${optional} | \`${cell(shown)}\` | ${cell(unit || measureOf(shown))} | ${cell(text)} |`;
    return [row, ...rowsOf(fieldsWithin(type) ?? [], `${name}.`)];
  });
}

/** A table of fields, or nothing where there are none. */
export function fieldTable(fields = []) {
  if (fields.length === 0) return '';
  const head = '| field | type | unit, range | what it is |\n| --- | --- | --- | --- |';
  return [head, ...rowsOf(fields)].join('\n');
}
