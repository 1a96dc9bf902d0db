import { describe, expect, test } from 'vitest';
import {
  layerCoefficient,
  modulusFromCbr,
  structuralNumber,
  structuralThickness,
} from 'settline/structure';
import { expectFault } from '../faults.js';

describe('structural number of layers', () => {
  const layers = [
    { name: 'asphalt', thickness: '3 in', coefficient: '0.4' },
    { name: 'base', thickness: '254 mm', coefficient: '0.14', drainage: '0.9' },
  ];

  test('each adds coefficient, inches and drainage, downward', () => {
    const stack = structuralNumber({ layers });
    expect(stack.structuralNumber).toBe(2.46); // 1.2 + 10 x 0.14 x 0.9
    expect(stack.layers.map(({ adds, downTo }) => [adds, downTo])).toEqual([
      [1.2, 1.2],
      [1.26, 2.46],
    ]);
    expect(stack.layers.map(({ drainage }) => drainage)).toEqual([1, 0.9]);
    expect(stack.layers[1]?.thickness.to('in').toString()).toBe('10');
    expect(stack.cautions.map(({ id }) => id)).toEqual(['pavement-design']);
    expect(stack.working.map(({ result }) => result.value)).toEqual([1.2, 2.46]);
    expect(stack.working[1]?.given[0]?.value).toBe(1.2);
  });

  test.each([
    ['thickness', '0 in', 'NOT_POSITIVE'],
    ['thickness', 3, 'UNIT_MISSING'],
    ['thickness', '20 ft', 'OUT_OF_RANGE'],
    ['coefficient', 1.2, 'OUT_OF_RANGE'],
    ['coefficient', undefined, 'REQUIRED'],
    ['drainage', 0.1, 'OUT_OF_RANGE'],
    ['drainage', 1.6, 'OUT_OF_RANGE'],
    ['name', '', 'EMPTY'],
  ] as const)('refuses %s %j', (field, value, code) => {
    const broken = [layers[0], { ...layers[1], [field]: value }];
    const issue = expectFault(() => structuralNumber({ layers: broken as never }), code);
    expect(issue.path).toEqual(['layers', 1, field]);
  });

  test('refuses no layers', () => {
    expectFault(() => structuralNumber({ layers: [] }), 'EMPTY_LIST');
  });
});

describe('thickness for a structural number', () => {
  test('what is missing over what an inch adds, up to the step', () => {
    const base = structuralThickness({
      needed: '2.46',
      above: '1.2',
      coefficient: '0.14',
      drainage: '0.9',
      step: '0.5 in',
    });
    expect(base.thickness.to('in').toString()).toBe('10');
    expect(base.rounded.to('in').toString()).toBe('10');
    expect(base.structuralNumber).toBe(2.46);
    const more = structuralThickness({ needed: '2.47', above: '1.2', coefficient: '0.14' });
    expect(more.thickness.to('in').toFixed(6)).toBe('9.071429'); // 1.27 / 0.14
    expect(more.rounded.to('in').toString()).toBe('10');
    expect(more.structuralNumber).toBe(2.6);
    expect(more.working.map(({ result }) => result.symbol)).toEqual(['D', 'T']);
    expect(more.cautions.map(({ id }) => id)).toEqual(['pavement-design']);
  });

  test('none where what lies above is enough', () => {
    const none = structuralThickness({ needed: 2, above: '2.5', coefficient: '0.1' });
    expect(none.thickness.isZero()).toBe(true);
    expect(none.rounded.isZero()).toBe(true);
    expect(none.structuralNumber).toBe(2.5);
  });

  test.each([
    ['needed', 0, 'NOT_POSITIVE'],
    ['needed', 31, 'OUT_OF_RANGE'],
    ['above', -1, 'NEGATIVE'],
    ['coefficient', 0, 'NOT_POSITIVE'],
    ['drainage', 2, 'OUT_OF_RANGE'],
    ['step', '0 in', 'NOT_POSITIVE'],
  ] as const)('refuses %s %j', (field, value, code) => {
    const options = { needed: 3, coefficient: '0.1', [field]: value };
    expect(expectFault(() => structuralThickness(options), code).path).toEqual([field]);
  });
});

describe('modulus and coefficient', () => {
  test('the bearing ratio, and where its rule ends', () => {
    const soft = modulusFromCbr({ cbr: 10 });
    expect(soft.resilientModulus.to('psi').toString()).toBe('15000');
    expect(soft.isBeyondRule).toBe(false);
    expect(modulusFromCbr({ cbr: '10.1' }).isBeyondRule).toBe(true);
    expect(soft.working[0]?.result.value).toBe(soft.resilientModulus);
    expect(soft.cautions.map(({ id }) => id)).toEqual(['pavement-design']);
    expectFault(() => modulusFromCbr({ cbr: 0 }), 'NOT_POSITIVE');
    expectFault(() => modulusFromCbr({ cbr: 201 }), 'OUT_OF_RANGE');
  });

  test('at powers of ten the relation is plain', () => {
    // 0.249 x 5 - 0.977 and 0.227 x 4 - 0.839
    const base = layerCoefficient({ layer: 'base', modulus: '100000 psi' });
    expect(base.coefficient).toBeCloseTo(0.268, 12);
    expect(base.cautions.map(({ id }) => id)).toEqual(['pavement-design']);
    expect(base.working[0]?.result.value).toBe(base.coefficient);
    const sub = layerCoefficient({ layer: 'sub-base', modulus: '10000 psi' });
    expect(sub.coefficient).toBeCloseTo(0.069, 12);
  });

  test('refuses what gives none', () => {
    // log10 E = 0.977 / 0.249 at 8388 psi
    const soft = () => layerCoefficient({ layer: 'base', modulus: '8380 psi' });
    expect(expectFault(soft, 'OUT_OF_RANGE').path).toEqual(['modulus']);
    expect(layerCoefficient({ layer: 'base', modulus: '8400 psi' }).coefficient).toBeGreaterThan(0);
    expectFault(
      () => layerCoefficient({ layer: 'surface' as never, modulus: '30000 psi' }),
      'UNKNOWN_CHOICE',
    );
  });
});
