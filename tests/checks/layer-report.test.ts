import { describe, expect, test } from 'vitest';
import {
  checkBondLine,
  checkCompaction,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLevels,
  checkLippage,
  checkThickness,
  describeCheckMove,
  layerReport,
  type AnyLayerCheck,
} from 'settline/checks';
import { length } from 'settline/units';
import { testRefusals } from '../refusals.js';

const levels = checkLevels({
  layer: 'base',
  readings: [
    { id: 'A', plan: '29.800 m', measured: '29.8104 m' },
    { id: 'B', plan: '29.720 m', measured: '29.720 m' },
    { id: 'C', plan: '29.700 m', measured: '29.696 m' },
  ],
  tolerance: 'irc-sp-63-2004',
});
const thickness = checkThickness({
  layer: 'base',
  design: '8 in',
  readings: [
    { id: 'A', thickness: '7 1/4 in' },
    { id: 'B', thickness: '7 1/2 in' },
  ],
  tolerance: 'paver-guide-in',
  averageTolerance: { over: '1/4 in', under: '1/4 in' },
});
const flatness = checkFlatness({
  layer: 'base',
  profile: ['0 mm', '-12 mm', '0 mm'].map((height, k) => ({
    station: { value: k * 1.5, unit: 'm' as const },
    height,
  })),
  tolerance: 'paver-guide-mm',
});
const lippage = checkLippage({
  place: 'pavers',
  readings: [{ id: 'door', lippage: '3.4 mm' }],
  tolerance: 'paver-guide-mm',
});
const joints = checkJointWidth({
  readings: [{ id: 'a', width: '2.5 mm' }],
  tolerance: { minimum: '2 mm', maximum: '1/8 in' },
});
const bond = checkBondLine({
  line: 'bond line of the walk',
  readings: ['0 mm', '-14 mm', '0 mm'].map((offset, k) => ({
    station: { value: k * 6, unit: 'm' as const },
    offset,
  })),
  tolerance: 'paver-guide-mm',
});
const fall = checkFall({
  layer: 'pavers',
  readings: [
    { id: 'drive', fall: '60 mm', run: '3 m' },
    { id: 'walk', fall: '59.99 mm', run: '3 m' },
  ],
  tolerance: 'paver-guide-mm',
  standardUncertainty: '0.001 mm',
});
const compaction = checkCompaction({
  layer: 'base',
  readings: [{ id: 'gate', wetDensity: '2.175 t/m3', moisture: 0.11 }],
  maximumDryDensity: '2 t/m3',
  test: 'standard',
  tolerance: 'paver-guide-mm',
});

const all: readonly AnyLayerCheck[] = [
  levels,
  thickness,
  flatness,
  lippage,
  joints,
  bond,
  fall,
  compaction,
];
const metric = layerReport({ layer: 'Base of the drive', checks: all, system: 'metric' });

describe('layerReport', () => {
  test('lines in millimetres: one that fails reads as beyond its limit', () => {
    const guide =
      '  Limits: Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade association guide); tolerance tables.';
    const irc =
      '  Limits: IRC:SP:63-2004 Guidelines for interlocking concrete block pavement; Annexure 1.3 and 1.4.';
    const move = 'Out of tolerance. Make the corrections listed, then measure again.';
    expect(metric.lines).toEqual([
      'Base of the drive: FAIL',
      'Level of the base against the plan: FAIL (no more than 10 mm high, 0 mm low)',
      '  A: 10.4 mm high: cut 10 mm',
      '  C: 4 mm low: add 4 mm',
      `  1 of 3 within tolerance. ${move}`,
      irc,
      'Thickness of the base: FAIL (7 1/2 in to 8 3/4 in)',
      '  A: 184 mm: add 19 mm',
      '  average: 187 mm: add 16 mm',
      `  1 of 3 within tolerance. ${move} If a layer is thick over a deep dig but its top is on grade, leave it.`,
      guide,
      'Flatness of the base: FAIL (no more than 10 mm under 3 m)',
      '  2: gap 12 mm at station 1.500 m: add 12 mm',
      '  2 of 3 within tolerance. Fill the low spots listed. If one high spot holds the straightedge up on both sides, cut that instead. Then measure again.',
      guide,
      'Lippage between pavers: FAIL (no more than 3 mm)',
      '  door: 3.4 mm: lower 1 mm',
      `  0 of 1 within tolerance. ${move}`,
      guide,
      'Joint width: PASS (2 mm to 1/8 in)',
      '  1 of 1 within tolerance. All readings are within tolerance.',
      '  Limits of the job.',
      'Straightness of the bond line of the walk: FAIL (no more than 13 mm from a string of 50 ft)',
      '  2: 14 mm right at station 6.000 m: move 14 mm left',
      `  2 of 3 within tolerance. ${move}`,
      guide,
      'Slope of the pavers: FAIL (at least 2%)',
      '  drive: 2.0% +/- 0.0001%: measure again',
      '  walk: 1.9997% +/- 0.0001%: lower 1 mm',
      `  0 of 2 within tolerance. ${move}`,
      guide,
      'Compaction of the base: FAIL (at least 98% of 2000.0 kg/m3, standard test)',
      '  gate: 97.97%: compact again',
      `  0 of 1 within tolerance. ${move}`,
      guide,
      expect.stringContaining('Caution: Figures for accessible routes'),
      expect.stringContaining('Caution: Water must run away'),
    ]);
  });

  test('lines in inches', () => {
    const { lines } = layerReport({
      layer: 'Base',
      checks: [levels, thickness, flatness, lippage],
      system: 'us',
      remarks: 'After the second pass, level from the garage slab.',
    });
    expect(lines[1]).toBe('After the second pass, level from the garage slab.');
    expect(lines).toContain('  A: 7/16 in high: cut 7/16 in');
    expect(lines).toContain('  A: 7 1/4 in: add 3/4 in');
    expect(lines).toContain('  average: 7 3/8 in: add 5/8 in');
    expect(lines).toContain('  2: gap 1/2 in at station 4.92 ft: add 1/2 in');
    expect(lines).toContain('Lippage between pavers: FAIL (no more than 3 mm)');
    expect(lines).toContain('  door: 1/8 in: lower 1/16 in');
  });

  test('is plain, frozen, and the same after JSON', () => {
    expect(JSON.parse(JSON.stringify(metric))).toEqual(metric);
    expect(Object.isFrozen(metric.checks[0]?.working[0]?.given[0])).toBe(true);
    expect(Object.isFrozen(metric.lines)).toBe(true);
  });

  test('carries every reading, those out of tolerance, the source and the working', () => {
    const [level, thick] = metric.checks;
    expect(level?.readings.map(({ id, verdict }) => `${id} ${verdict}`)).toEqual([
      'A fail',
      'B pass',
      'C fail',
    ]);
    expect(level?.readings[1]).toEqual({
      id: 'B',
      verdict: 'pass',
      measured: '0 mm',
      value: { value: '0', unit: 'm' },
      margin: { value: '0', unit: 'm' },
      move: null,
    });
    expect(level?.outOfTolerance.map(({ id }) => id)).toEqual(['A', 'C']);
    expect(level).toMatchObject({
      check: 'level',
      toleranceSet: 'irc-sp-63-2004',
      source: { id: 'irc-sp-63-2004', section: 'Annexure 1.3 and 1.4', status: 'read' },
    });
    expect(level?.working[0]).toMatchObject({
      formula: 'd = z - z0',
      given: [{ symbol: 'z', name: 'measured level', value: '29.8104 m' }, { value: '29.8000 m' }],
      result: { symbol: 'd', value: '10.40 mm' },
    });
    expect(level?.working[1]).toMatchObject({
      formula: 'm = min(over - d, under + d)',
      given: [{ value: '10.40 mm' }, { value: '10.00 mm' }, { value: '0.00 mm' }],
      result: { symbol: 'm', value: '-0.40 mm' },
    });
    expect(thick?.readings.map(({ id }) => id)).toEqual(['A', 'B', 'average']);
    expect(metric.checks[4]?.source).toBeNull();
  });

  test('the verdict is the worst of the checks', () => {
    const verdict = (...checks: readonly AnyLayerCheck[]) =>
      layerReport({ layer: 'x', checks, system: 'us' }).verdict;
    const unclear = checkLippage({
      place: 'pavers',
      readings: [{ id: 'a', lippage: '3 mm' }],
      tolerance: 'paver-guide-mm',
      uncertainty: '1 mm',
    });
    expect(verdict(joints)).toBe('pass');
    expect(verdict(joints, unclear)).toBe('unclear');
    expect(verdict(unclear, flatness, joints)).toBe('fail');
    expect(layerReport({ layer: 'x', checks: [unclear], system: 'us' }).lines[2]).toBe(
      '  a: 1/8 in: measure again',
    );
  });

  test('cautions come once each', () => {
    const { cautions } = layerReport({ layer: 'x', checks: [lippage, lippage], system: 'us' });
    expect(cautions.map(({ id }) => id)).toEqual(['access']);
  });

  testRefusals(layerReport, { layer: 'x', checks: [levels], system: 'us' }, [
    ['layer', ' ', 'EMPTY'],
    ['checks', [], 'EMPTY_LIST'],
    ['checks', undefined, 'REQUIRED'],
    ['checks.0', 'pass', 'WRONG_TYPE', 'checks[0]'],
    ['checks.0', { ...levels }, 'WRONG_TYPE', 'checks[0]'],
    ['checks.0', {}, 'WRONG_TYPE', 'checks[0]'],
    ['checks.0', JSON.parse(JSON.stringify(levels)), 'WRONG_TYPE', 'checks[0]'],
    ['system', 'imperial', 'UNKNOWN_CHOICE'],
    ['remarks', '', 'EMPTY'],
  ]);
});

describe('describeCheckMove', () => {
  test.each([
    ['cut', '12 mm', 'cut 12 mm'],
    ['add', '12 mm', 'add 12 mm'],
    ['raise', '3.4 mm', 'raise 3 mm'],
    ['lower', '0.2 mm', 'lower 1 mm'],
    ['close', '2 mm', 'close up 2 mm'],
    ['open', '2 mm', 'open 2 mm'],
    ['move-left', '2 mm', 'move 2 mm left'],
    ['move-right', '2 mm', 'move 2 mm right'],
  ] as const)('%s %s', (action, by, text) => {
    expect(describeCheckMove({ action, by: length(by) }, { as: 'mm' })).toBe(text);
  });

  test('without a length, or with nothing to do', () => {
    expect(describeCheckMove({ action: 'compact', by: null }, { as: 'mm' })).toBe('compact again');
    expect(describeCheckMove(null, { as: 'in' })).toBe('leave');
  });
});
