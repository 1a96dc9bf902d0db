/** How deep this run goes: 1 in `npm test`, 10 in `npm run test:deep`. */
export const DEPTH = Number(process.env['SETTLINE_DEPTH'] ?? 1);
if (!(Number.isInteger(DEPTH) && DEPTH >= 1)) {
  throw new Error(`SETTLINE_DEPTH is a whole number from 1, not ${DEPTH}`);
}

/** How many cases a property is tried on: this many in `npm test`, ten times as many in a deep run. */
export const runs = (count: number): { readonly numRuns: number } => ({ numRuns: count * DEPTH });
