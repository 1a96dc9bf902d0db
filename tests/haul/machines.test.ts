import { describe, expect, test } from 'vitest';
import { cuttingEdge, wheelStressScreen } from 'settline/haul';
import { testRefusals } from '../refusals.js';

describe('wheel stress screen', () => {
  const valid = {
    wheelLoad: '9 kN',
    tyrePressure: '400 kPa',
    depth: '0.35 m',
    shearStrength: '12 6/7 kPa',
    geotextile: false,
  };

  test('exactly at what the rule allows is not over it', () => {
    // a = 0.15 m: 9 kN on 0.5 m by 0.5 m is 36 kPa, and 2.8 x 90 / 7 = 36
    const screen = wheelStressScreen(valid);
    expect(screen.contactSide.to('m').toString()).toBe('0.15');
    expect(screen.stress.to('kPa').toString()).toBe('36');
    expect([screen.ratio, screen.isOver]).toEqual([1, false]);
    expect(wheelStressScreen({ ...valid, depth: '0.3499 m' }).isOver).toBe(true);
  });

  test('a geotextile lets the rule allow more, and it stays a screen', () => {
    const screen = wheelStressScreen({ ...valid, geotextile: true });
    expect(screen.permissible.toNumber('kPa')).toBeCloseTo(450 / 7, 12);
    expect(screen.scope).toBe('screen-only');
    expect(screen.note).toMatch(/not a design/);
  });

  testRefusals(wheelStressScreen, valid, [
    ['wheelLoad', '1000 kg', 'UNIT_UNKNOWN'],
    ['tyrePressure', '0 kPa', 'NOT_POSITIVE'],
    ['depth', undefined, 'REQUIRED'],
    ['shearStrength', 40, 'UNIT_MISSING'],
    ['geotextile', undefined, 'REQUIRED'],
    ['geotextile', 'yes', 'WRONG_TYPE'],
  ]);
});

describe('cutting edge', () => {
  const even = {
    frontLeft: '400 mm',
    frontRight: '400 mm',
    rearLeft: '400 mm',
    rearRight: '400 mm',
  };
  const machine = {
    fullRadius: '400 mm',
    wheelbase: '1 m',
    track: '1.2 m',
    reach: '0.85 m',
    edgeWidth: '1.8 m',
  };
  const millimetres = (loadedRadius: typeof even, wear?: { left: string; right: string }) => {
    const edge = cuttingEdge({
      ...machine,
      loadedRadius,
      ...(wear === undefined ? {} : { wear }),
    });
    return [edge.left, edge.middle, edge.right, edge.across].map((q) => q.to('mm').toString());
  };

  test('good tyres move nothing, wear lifts the edge', () => {
    expect(millimetres(even)).toEqual(['0', '0', '0', '0']);
    expect(millimetres(even, { left: '6 mm', right: '2 mm' })).toEqual(['6', '4', '2', '4']);
  });

  test('soft front tyres drop the edge, soft rear tyres lift it', () => {
    const soft = { frontLeft: '380 mm', frontRight: '380 mm' };
    expect(millimetres({ ...even, ...soft })[1]).toBe('-37');
    expect(millimetres({ ...even, rearLeft: '380 mm', rearRight: '380 mm' })[1]).toBe('17');
  });

  test('soft on the left: the left end hangs', () => {
    const soft = { ...even, frontLeft: '380 mm', rearLeft: '380 mm' };
    expect(millimetres(soft)).toEqual(['-25', '-10', '5', '-30']);
    const { crossTilt } = cuttingEdge({ ...machine, loadedRadius: soft });
    expect(crossTilt.toNumber('percent')).toBeCloseTo(-5 / 3, 12);
  });

  testRefusals(
    cuttingEdge,
    { ...machine, loadedRadius: even, wear: { left: '0 mm', right: '0 mm' } },
    [
      ['loadedRadius.frontLeft', undefined, 'REQUIRED'],
      ['loadedRadius.rearRight', '0 mm', 'NOT_POSITIVE'],
      ['fullRadius', 400, 'UNIT_MISSING'],
      ['wheelbase', '0 m', 'NOT_POSITIVE'],
      ['track', '0 m', 'NOT_POSITIVE'],
      ['edgeWidth', undefined, 'REQUIRED'],
      ['reach', '-1 m', 'NEGATIVE'],
      ['wear.left', '-1 mm', 'NEGATIVE'],
      ['wear.right', undefined, 'REQUIRED'],
    ],
  );
});
