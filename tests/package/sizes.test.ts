// What each subpath costs: bytes over the wire and processor time to load, against sizes.json.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, test } from 'vitest';

const consumer = inject('consumer');

interface Budgets {
  /** Bytes of all of a subpath, bundled, minified and zipped. */
  readonly gzip: Readonly<Record<string, number>>;
  /** The same of some names of a subpath: what an app takes that prints saved plans. */
  readonly names: readonly {
    readonly subpath: string;
    readonly names: readonly string[];
    readonly gzip: number;
  }[];
  /** Bytes of a drawing beside `planJob`, over those of `planJob` alone. */
  readonly overPlanJob: Readonly<Record<string, number>>;
  /** Processor time of an import, over that of an import of zod alone. */
  readonly coldImport: Readonly<Record<string, number>>;
}
const budgets = JSON.parse(
  readFileSync(join(import.meta.dirname, 'sizes.json'), 'utf8'),
) as Budgets;

const gzipOf = (subpath: string, names = '*'): Promise<number> =>
  gzipOfText(`export ${names} from '${subpath === '.' ? 'settline' : `settline/${subpath}`}';`);

async function gzipOfText(contents: string): Promise<number> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: consumer, loader: 'js' },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    external: ['tinypool'],
    logLevel: 'silent',
  });
  return gzipSync(outputFiles[0]?.contents ?? new Uint8Array()).length;
}

describe('bytes', () => {
  test('the table has every subpath', () => {
    const { exports } = JSON.parse(
      readFileSync(join(consumer, 'node_modules', 'settline', 'package.json'), 'utf8'),
    ) as { exports: Readonly<Record<string, unknown>> };
    const subpaths = Object.keys(exports)
      .filter((name) => !name.endsWith('.json'))
      .map((name) => name.replace(/^\.\//, ''));
    expect(Object.keys(budgets.gzip).sort()).toEqual(subpaths.sort());
  });

  test.each(Object.entries(budgets.gzip))(
    '%s: no more than %i, and not far below',
    async (subpath, most) => {
      const bytes = await gzipOf(subpath);
      expect(bytes).toBeLessThanOrEqual(most);
      // a budget that nobody reaches holds nothing
      expect(bytes).toBeGreaterThan(0.85 * most);
    },
  );

  test.each(budgets.names)('$names of $subpath: no more than $gzip', async (budget) => {
    const bytes = await gzipOf(budget.subpath, `{ ${budget.names.join(', ')} }`);
    expect(bytes).toBeLessThanOrEqual(budget.gzip);
    expect(bytes).toBeGreaterThan(0.85 * budget.gzip);
  });
});

test.each(Object.entries(budgets.overPlanJob))(
  '%s costs less than %i bytes over what a plan needs',
  async (drawing, most) => {
    const plan = "export { planJob } from 'settline/job';";
    const own = `export { ${drawing} } from 'settline/drawing';`;
    const bytes = (await gzipOfText(plan + own)) - (await gzipOfText(plan));
    expect(bytes).toBeLessThan(most);
    expect(bytes).toBeGreaterThan(0.85 * most);
  },
);

/** Processor time of an import in a process of its own, the least of some. */
function importTime(specifier: string): number {
  const code = `const before = process.cpuUsage();
    await import('${specifier}');
    const { user, system } = process.cpuUsage(before);
    process.stdout.write(String(user + system));`;
  const times = Array.from({ length: 4 }, () =>
    Number(
      spawnSync('node', ['--input-type=module', '-e', code], { cwd: consumer, encoding: 'utf8' })
        .stdout,
    ),
  );
  return Math.min(...times);
}

test('a cold import costs no more than its share of an import of zod', () => {
  const zod = importTime('zod');
  expect(zod).toBeGreaterThan(1000);
  const over = Object.entries(budgets.coldImport).flatMap(([subpath, most]) => {
    const ratio = importTime(subpath === '.' ? 'settline' : `settline/${subpath}`) / zod;
    return ratio <= most ? [] : [`${subpath}: ${ratio.toFixed(2)} of zod, budget ${most}`];
  });
  expect(over).toEqual([]);
});
