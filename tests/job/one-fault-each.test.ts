import { describe, expect, test } from 'vitest';
import { pathText, type FieldPath } from 'settline';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import slateWharf from '../../examples/slate-wharf.json' with { type: 'json' };
import { edit, faultsOfFile, isInFile, misspell, pathsIn } from '../job-edits.js';

const SITES: readonly (readonly [string, unknown])[] = [
  ['Cedar Court', cedarCourt],
  ['Mill Garth', millGarth],
  ['Slate Wharf', slateWharf],
];

const faultsAfter = (site: unknown, path: FieldPath, change: Parameters<typeof edit>[2]) => {
  const file = structuredClone(site);
  edit(file, path, change);
  return { file, faults: faultsOfFile(file) };
};

describe.each(SITES)('a field of %s that cannot be read is one fault', (_name, site) => {
  const paths = pathsIn(site).slice(1);
  /** An edge about which nothing is known is no fault. */
  const readable = paths.filter((path) => path.at(-2) !== 'edges');
  const keys = paths.filter((path) => typeof path.at(-1) === 'string');

  test('null in any place', () => {
    expect(paths.length).toBeGreaterThan(200);
    const wrong = readable.flatMap((path) => {
      const { faults } = faultsAfter(site, path, (holder, step) => {
        holder[step] = null;
      });
      const [only] = faults;
      const isOne = faults.length === 1 && only && pathText(only.path) === pathText(path);
      return isOne === true ? [] : [[pathText(path), faults]];
    });
    expect(wrong).toEqual([]);
  });

  test('any key misspelt: the one that was meant is named, and not missed', () => {
    const wrong = keys.flatMap((path) => {
      const { faults } = faultsAfter(site, path, misspell);
      const key = String(path.at(-1));
      const [only] = faults;
      const at = pathText([...path.slice(0, -1), `${key}${key.at(-1)}`]);
      const isMeant = only?.message.includes(`Did you mean ${key}?`);
      const isOne = faults.length === 1 && pathText(only?.path ?? []) === at;
      return isOne && isMeant === true ? [] : [[pathText(path), faults]];
    });
    expect(wrong).toEqual([]);
  });

  test('any key taken away: planned without it, or missed where it belongs', () => {
    const wrong = keys.flatMap((path) => {
      const { file, faults } = faultsAfter(site, path, Reflect.deleteProperty);
      return faults.filter((fault) => !isInFile(file, fault.path));
    });
    expect(wrong).toEqual([]);
  });
});
