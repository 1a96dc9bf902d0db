import { isQuantity, type Decimal } from 'settline';

const LONGEST = 600;
const MOST = 60;
const DEEPEST = 6;

/** Text as code would write it, in the quotes it needs least escapes in. */
function shownString(text: string): string {
  const escaped = JSON.stringify(text).slice(1, -1).replaceAll('\\"', '"');
  if (!text.includes("'")) return `'${escaped}'`;
  return text.includes('`') ? JSON.stringify(text) : `\`${escaped.replaceAll('${', '\\${')}\``;
}

/** A value as a reader of code would write it; long ones are cut and end in `...`. */
export function shownValue(value: unknown, depth = 0): string {
  const text = wholeValue(value, depth);
  return depth === 0 && text.length > LONGEST ? `${text.slice(0, LONGEST)} ...` : text;
}

function wholeValue(value: unknown, depth: number): string {
  if (typeof value === 'string') return shownString(value);
  if (typeof value === 'bigint') return `${value}n`;
  if (typeof value === 'function') return `function ${value.name}`;
  if (typeof value === 'symbol') return value.toString();
  if (typeof value !== 'object' || value === null)
    return Object.is(value, -0) ? '-0' : String(value);
  if (isQuantity(value)) return value.toString();
  if (value instanceof Error) return `${value.name}: ${value.message}`;
  if ('toFixed' in value && 'toNumber' in value) return (value as Decimal).toString();
  if (depth >= DEEPEST) return '...';
  if (Array.isArray(value) || ArrayBuffer.isView(value)) return shownList(value, depth);
  const fields = Object.entries(value).slice(0, MOST);
  const inner = fields.map(([key, one]) => `${shownKey(key)}: ${shownValue(one, depth + 1)}`);
  return inner.length === 0 ? '{}' : `{ ${inner.join(', ')} }`;
}

function shownList(value: readonly unknown[] | ArrayBufferView, depth: number): string {
  const list: unknown[] = Array.isArray(value) ? value : Array.from(value as Float64Array);
  const inner = list.slice(0, MOST).map((one) => shownValue(one, depth + 1));
  if (list.length > MOST) inner.push('...');
  return `[${inner.join(', ')}]`;
}

const shownKey = (key: string): string => (/^[A-Za-z_$][\w$]*$/.test(key) ? key : shownString(key));
