import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pathText, type FieldPath } from 'settline';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import slateWharf from '../../examples/slate-wharf.json' with { type: 'json' };
import { edit, faultsOfFile, isInFile, misspell, pathsIn, valueAt } from '../job-edits.js';
import { runs } from '../runs.js';
import { jobOf, site } from './site-jobs.js';

/** A job file that is good: one of the built-in sites, or a made-up one. */
const files: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(cedarCourt, millGarth, slateWharf),
  site.map((of) => jobOf(of, 'us')),
);

type Change = (file: unknown, path: FieldPath, pick: number) => void;

const JUNK: readonly unknown[] = [null, 5, 'x', '', [], {}, true, Number.NaN, [null], { value: 1 }];
const put =
  (value: (pick: number, before: unknown) => unknown): Change =>
  (file, path, pick) =>
    edit(file, path, (holder, step) => {
      holder[step] = value(pick, holder[step]);
    });

/** The ways in which files go wrong. */
const CHANGES: Readonly<Record<string, Change>> = {
  'wrong type': put((pick) => JUNK[pick % JUNK.length]),
  'wrong unit': put((_pick, before) =>
    typeof before === 'string' ? before.replace(/[a-z]\S*$|"$/, 'kg') : 'kg',
  ),
  'out of range': put((pick, before) => (pick % 2 === 0 ? '1000000000 m' : tooLarge(before))),
  'misspelt key': (file, path) =>
    edit(file, path, (holder, step) => {
      if (!Array.isArray(holder)) misspell(holder, step);
    }),
  'removed key': (file, path) => edit(file, path, Reflect.deleteProperty),
  'doubled entry': (file, path) => {
    const list = valueAt(file, path);
    if (Array.isArray(list)) list.push(structuredClone(list[0]));
  },
  'unknown pavement': (file, _path, pick) =>
    edit(file, ['stringLines', pick % 3, 'pavement'], (holder, step) => {
      holder[step] = 'nowhere';
    }),
};

const tooLarge = (before: unknown): unknown =>
  typeof before === 'number' ? before * 1e12 : String(before).replace(/^-?\d+/, '$&000000000');

interface Edit {
  readonly kind: string;
  /** Which of the paths, and which of the values. */
  readonly at: number;
  readonly pick: number;
}

const edits: fc.Arbitrary<readonly Edit[]> = fc.array(
  fc.record({
    kind: fc.constantFrom(...Object.keys(CHANGES)),
    at: fc.nat(100_000),
    pick: fc.nat(1000),
  }),
  { minLength: 1, maxLength: 3 },
);

/** A copy with changes made to it, and what was changed where. */
function broken(whole: unknown, changes: readonly Edit[]) {
  const file = structuredClone(whole);
  for (const { kind, at, pick } of changes) {
    const paths = pathsIn(file).slice(1);
    const path = paths[at % paths.length] ?? [];
    CHANGES[kind]?.(file, path, pick);
  }
  return file;
}

test('a file that goes wrong in up to three ways is planned or refused, never more', () => {
  let refused = 0;
  fc.assert(
    fc.property(files, edits, (whole, changes) => {
      const file = broken(whole, changes);
      const before = JSON.stringify(file);
      const faults = faultsOfFile(file);
      refused += faults.length > 0 ? 1 : 0;
      for (const { path, message } of faults) {
        expect(isInFile(file, path), `${pathText(path)}: ${message}`).toBe(true);
        expect(message.length).toBeLessThan(400);
      }
      const places = faults.map(({ path, code }) => `${pathText(path)} ${code}`);
      expect(places).toEqual([...new Set(places)]);
      expect(JSON.stringify(file)).toBe(before);
    }),
    runs(400),
  );
  expect(refused).toBeGreaterThan(300);
});

test('of two fields that cannot be read each is one fault', () => {
  fc.assert(
    fc.property(files, fc.nat(100_000), fc.nat(100_000), (whole, first, second) => {
      const paths = pathsIn(whole).slice(1);
      const [a = [], b = []] = [paths[first % paths.length], paths[second % paths.length]];
      const isWithin = (outer: FieldPath, inner: FieldPath) =>
        outer.every((step, k) => inner[k] === step);
      // an edge about which nothing is known is no fault
      fc.pre([a, b].every((path) => path.at(-2) !== 'edges'));
      fc.pre(!isWithin(a, b) && !isWithin(b, a));
      const file = structuredClone(whole);
      for (const path of [a, b]) put(() => null)(file, path, 0);
      const found = faultsOfFile(file).map(({ path }) => pathText(path));
      expect(found.sort()).toEqual([pathText(a), pathText(b)].sort());
    }),
    runs(400),
  );
});
