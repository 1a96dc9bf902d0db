import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, test } from 'vitest';

const consumer = inject('consumer');
const tarball = inject('tarball');
const root = join(import.meta.dirname, '..', '..');
const bin = (name: string) => join(root, 'node_modules', '.bin', name);

function run(command: string, args: readonly string[], cwd = consumer): string {
  try {
    return execFileSync(command, [...args], {
      cwd,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  } catch (error) {
    const { stdout, stderr } = error as { stdout: string; stderr: string };
    throw new Error(`${command} ${args.join(' ')}\n${stdout}\n${stderr}`, { cause: error });
  }
}

describe('fresh consumers of the packed tarball', () => {
  test('an ES module', () => {
    const { total } = JSON.parse(run('node', ['esm.mjs'])) as { total: string };
    expect(total).toBe('18.75');
  });

  test('CommonJS, beside the ES module copy', () => {
    const { total } = JSON.parse(run('node', ['cjs.cjs'])) as { total: string };
    expect(total).toBe('18.75');
  });

  test.each([
    ['typescript', 'node16', 'node16'],
    ['typescript', 'esnext', 'bundler'],
    ['typescript-native', 'node16', 'node16'],
    ['typescript-native', 'esnext', 'bundler'],
  ])('strict, %s, module %s, resolution %s', (compiler, module, moduleResolution) => {
    writeFileSync(
      join(consumer, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          module,
          moduleResolution,
          target: 'es2022',
          strict: true,
          exactOptionalPropertyTypes: true,
          noUncheckedIndexedAccess: true,
          skipLibCheck: false,
          types: [],
          noEmit: true,
        },
        files: ['strict.ts'],
      }),
    );
    const tsc = join(root, 'node_modules', compiler, 'bin', 'tsc');
    expect(run(tsc, ['-p', 'tsconfig.json'])).toBe('');
  });

  test('the example prints the same sheet as in the repository', () => {
    const script = readFileSync(join(root, 'examples', 'job-sheet.mjs'), 'utf8');
    writeFileSync(join(consumer, 'job-sheet.mjs'), script);
    for (const site of ['cedar-court.json', 'mill-garth.json']) {
      writeFileSync(join(consumer, site), readFileSync(join(root, 'examples', site), 'utf8'));
    }
    const sheet = run('node', ['job-sheet.mjs']);
    expect(sheet).toContain('SUBGRADE');
    expect(run('node', ['job-sheet.mjs', '--metric'])).toContain('Mill Garth');
    expect(run('node', ['job-sheet.mjs', '--working'])).toContain('D = sum(t)');
    expect(sheet).toBe(run('node', [join(root, 'examples', 'job-sheet.mjs')], root));
  });
});

describe('bundled', () => {
  const bundle = async (code: string) => {
    const result = await build({
      stdin: { contents: code, resolveDir: consumer, loader: 'js' },
      bundle: true,
      minify: true,
      write: false,
      format: 'esm',
      platform: 'browser',
      logLevel: 'silent',
    });
    const text = result.outputFiles[0]?.text ?? '';
    return { text, gzip: gzipSync(text).length };
  };

  test('bulk geometry comes without decimals, units or schema', async () => {
    const { text, gzip } = await bundle(
      "import { fitLine } from 'settline/geometry'; console.log(fitLine([[0, 0], [1, 0]]).rms);",
    );
    expect(text).not.toMatch(/Decimal|toAnchor|to_anchor|ZodError/i);
    expect(gzip).toBeLessThan(3_200);
  });

  test('units come without the schema', async () => {
    const { text, gzip } = await bundle(
      "import { length } from 'settline/units'; console.log(length('1 in').to('mm'));",
    );
    expect(text).not.toMatch(/ZodError/);
    expect(gzip).toBeLessThan(32_500);
  });

  test('a layer build-up comes without the schema, also through the root', async () => {
    const { text } = await bundle(
      "import { buildUp } from 'settline'; console.log(buildUp({ layers: [] }));",
    );
    expect(text).not.toMatch(/ZodError/);
  });

  test('a plan comes without zod, which only its schema needs', async () => {
    const { text, gzip } = await bundle("export { planJob } from 'settline/job';");
    expect(text).not.toMatch(/_zod|ZodError/);
    // outlines that are united, surfaces, orders of every kind and all warnings
    expect(gzip).toBeLessThan(197_000);
    const schema = await bundle("export { jobSchema } from 'settline/job';");
    expect(schema.text).toContain('_zod');
  });

  test('a drawing adds little to what the plan needs', async () => {
    const plan = "export { planJob } from 'settline/job';";
    const { gzip: alone } = await bundle(plan);
    const most = {
      drawPlan: 17_600,
      drawDig: 14_200,
      drawSection: 12_900,
      drawProfile: 11_800,
      drawStraightedge: 11_300,
      drawLayerCheck: 10_400,
      drawStakeRow: 9_800,
      drawSteps: 7_300,
    };
    for (const [name, bound] of Object.entries(most)) {
      const { text, gzip } = await bundle(`${plan} export { ${name} } from 'settline/drawing';`);
      expect(gzip - alone, name).toBeLessThan(bound);
      // the table of the fields of saved plans stays outside
      expect(text, name).not.toContain('tension force;weightPerLength line-weight');
    }
  });

  test('a drawing of the ground adds little to its calculation', async () => {
    const most = [
      ["export { berggrenDepth } from 'settline/ground';", 'drawFrostDepth', 10_300],
      ["export { minimumBuildUp } from 'settline/build-up';", 'drawMinimumBuildUp', 10_200],
      ["export { soilPhases } from 'settline/ground';", 'drawSoilPhases', 9_300],
    ] as const;
    for (const [calculation, name, bound] of most) {
      const { gzip: alone } = await bundle(calculation);
      const { gzip } = await bundle(`${calculation} export { ${name} } from 'settline/drawing';`);
      expect(gzip - alone, name).toBeLessThan(bound);
    }
  });

  test('a saved plan is read and printed without the planner', async () => {
    const { text, gzip } = await bundle(
      "export { readPlan, renderJobSheet } from 'settline/sheet';",
    );
    expect(text).not.toMatch(/_zod|ZodError|Clipper|unparse/);
    // decimals and units, the words of the sheet, the steps of work, the table of the fields
    expect(gzip).toBeLessThan(70_500);
    expect(text.length).toBeLessThan(205_000);
  });

  test('one name of the root comes alone', async () => {
    const { text } = await bundle("export { isSettlineError } from 'settline';");
    expect(text.length).toBeLessThan(300);
  });

  test('a whole plan runs when bundled for a browser', async () => {
    const { text, gzip } = await bundle(
      `import { planJob, renderJobSheet } from 'settline/job';
       import job from './cedar-court.json';
       globalThis.sheet = renderJobSheet(planJob(job), { system: 'us' });`,
    );
    // schema, decimals, geometry, triangulation and every part that a job file may ask for
    expect(gzip).toBeLessThan(224_200);
    writeFileSync(join(consumer, 'bundled.mjs'), `${text}\nconsole.log(globalThis.sheet);`);
    expect(run('node', ['bundled.mjs'])).toContain('SUBGRADE');
  });
});

describe('what is packed', () => {
  test('publint finds nothing', () => {
    expect(run(bin('publint'), ['run', '--strict', tarball], root)).toContain('All good!');
  });

  test('types resolve for node16 and bundlers', () => {
    const report = run(
      bin('attw'),
      [tarball, '--profile', 'node16', '--format', 'table-flipped', '--no-color', '--no-emoji'],
      root,
    );
    // one line for each folder, the root and the manifest; attw exits with a fault otherwise
    const rows = report.split('\n').filter((row) => row.includes('"settline'));
    const modules = rows.filter((row) => !row.includes('.json'));
    expect(modules.length).toBeGreaterThan(8);
    for (const row of modules) expect(row).toMatch(/OK \(CJS\).*OK \(ESM\).*OK/);
  });
});
