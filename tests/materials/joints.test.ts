import { describe, expect, test } from 'vitest';
import { jointSand, jointTopUp } from 'settline/materials';
import { faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const paving = {
  area: '100 m2',
  unit: { length: '198 mm', width: '98 mm' },
  joint: '2 mm',
  density: '1500 kg/m3',
} as const;

describe('joint sand', () => {
  const joints = { ...paving, depth: '60 mm' } as const;

  test('the corner of two joints counts once', () => {
    // 1 - 198 x 98 / (200 x 100) = 0.0298; the two joints added up would be 0.03
    const sand = jointSand(joints);
    expect(sand.jointShare).toBe(0.0298);
    expect(sand.volume.to('m3').toString()).toBe('0.1788');
    expect(sand.mass.to('kg').toString()).toBe('268.2');
    expect(sand).toMatchObject({ bags: null, surplus: null });
  });

  test('recess and what rises from the bed are not filled; waste is on top', () => {
    const sand = jointSand({ ...joints, recess: '5 mm', riseFromBed: '15 mm', waste: '0.1' });
    expect(sand.filledDepth.to('mm').toString()).toBe('40');
    expect(sand.volume.to('m3').toString()).toBe('0.1192');
    expect(sand.mass.to('kg').toString()).toBe('196.68');
  });

  test('whole bags: exactly twelve are twelve, slightly more is thirteen', () => {
    const bags = (bag: string) => {
      const { bags: count, surplus } = jointSand({ ...joints, bag });
      return [count, surplus?.to('kg').toString()];
    };
    expect(bags('22.35 kg')).toEqual([12, '0']);
    expect(bags('22.3499 kg')).toEqual([13, '22.3487']);
    expect(bags('300 kg')).toEqual([1, '31.8']);
  });

  test('nothing to pave, nothing to fill', () => {
    const none = jointSand({ ...joints, area: '0 m2', bag: '25 kg' });
    expect(none.bags).toBe(0);
    expect(none.mass.isZero()).toBe(true);
  });

  test('shows each step', () => {
    const { working } = jointSand({ ...joints, waste: 0.05 });
    expect(working.map(formulaOf)).toEqual([
      'k = 1 - l * w / ((l + j) * (w + j))',
      'V = A * k * h',
      'M = V * d * (1 + q)',
    ]);
    expect(working[2]?.given[2]?.value.toString()).toBe('0.05');
  });

  testRefusals(jointSand, joints, [
    ['area', '-1 m2', 'NEGATIVE'],
    ['unit.length', '0 mm', 'NOT_POSITIVE'],
    ['unit.width', undefined, 'REQUIRED'],
    ['joint', '0 mm', 'NOT_POSITIVE'],
    ['joint', '101 mm', 'OUT_OF_RANGE'],
    ['joint', 3, 'UNIT_MISSING'],
    ['depth', '0 mm', 'NOT_POSITIVE'],
    ['recess', '60 mm', 'OUT_OF_RANGE'],
    ['riseFromBed', '61 mm', 'OUT_OF_RANGE', 'recess'],
    ['density', '6 t/m3', 'OUT_OF_RANGE'],
    ['waste', 10, 'OUT_OF_RANGE'],
    ['bag', '0 kg', 'NOT_POSITIVE'],
    ['bag', '50 ton', 'UNIT_AMBIGUOUS'],
  ]);

  test('all faults at once', () => {
    const codes = faultsOf(() =>
      jointSand({ ...joints, joint: '0 mm', density: '0 kg/m3', recess: '1 m' }),
    ).map(({ code, path }) => `${code} ${path.join('.')}`);
    expect(codes).toEqual(['NOT_POSITIVE joint', 'NOT_POSITIVE density', 'OUT_OF_RANGE recess']);
  });
});

describe('topping up', () => {
  const joints = { ...paving, depthLost: '10 mm' } as const;

  test('takes as much as was lost', () => {
    const again = jointTopUp(joints);
    expect(again.volume.to('m3').toString()).toBe('0.0298');
    expect(again.mass.to('kg').toString()).toBe('44.7');
    expect(again).toMatchObject({ verdict: 'pass' });
  });

  test('half an inch is not due yet, slightly more is', () => {
    const at = (depthLost: string, more = {}) => jointTopUp({ ...joints, depthLost, ...more });
    expect(at('1/2 in')).toMatchObject({ verdict: 'pass' });
    expect(at('12.7001 mm')).toMatchObject({ verdict: 'fail' });
    expect(at('12.7001 mm').note).toContain('drainage fault');
    expect(at('12 mm', { uncertainty: '1 mm' })).toMatchObject({ verdict: 'unclear' });
    expect(at('14 mm', { uncertainty: '1 mm' })).toMatchObject({ verdict: 'fail' });
    expect(at('8 mm', { limit: '7 mm' }).verdict).toBe('fail');
    expect(at('0 mm').mass.isZero()).toBe(true);
  });

  test('names its source', () => {
    expect(jointTopUp(joints).working.at(-1)?.source).toBe('paver-tolerances');
  });

  test('a limit of your own is no published one', () => {
    const sourcesOf = (more: object) => {
      const step = jointTopUp({ ...joints, ...more }).working.at(-1);
      return [step?.source, step?.given.find(({ symbol }) => symbol === 'h0')?.source];
    };
    expect(sourcesOf({})).toEqual(['paver-tolerances', 'paver-tolerances']);
    expect(sourcesOf({ limit: '7 mm' })).toEqual(['derived', null]);
  });

  testRefusals(jointTopUp, joints, [
    ['depthLost', '-1 mm', 'NEGATIVE'],
    ['depthLost', undefined, 'REQUIRED'],
    ['limit', '-1 mm', 'NEGATIVE'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
    ['joint', '0 mm', 'NOT_POSITIVE'],
  ]);
});
