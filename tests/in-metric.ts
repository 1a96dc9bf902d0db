import { length } from 'settline/units';

/** A job file with every length said in millimetres and every outline in metres, exactly. */
export const inMetric = (file: unknown): unknown => turned(file);

const metricLength = (text: string) => `${length(text).to('mm').toFixed()} mm`;

function turned(value: unknown): unknown {
  if (typeof value === 'string' && /^[-\d]/.test(value) && /( in| ft)$|["']$/.test(value)) {
    return metricLength(value);
  }
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  if ('points' in value && 'unit' in value && value.unit === 'ft') {
    const points = value.points as number[][];
    const inMetres = points.map((point) => point.map((one) => length(one, 'ft').to('m').toFixed()));
    return { ...value, unit: 'm', points: inMetres };
  }
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, turned(one)]));
}
