// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import { checkSquare, planDistance, pointByTapes } from 'settline/stakes';
import { expectPrinted } from '../printed.js';

describe('diagonals', () => {
  // Closed form, derived
  test.each([
    ['20', '30', '36.055513'],
    ['16', '24', '28.844410'],
    ['40', '25.5', '47.436800'],
  ])('of %s by %s', (width, length, printed) => {
    const { trueDiagonal } = checkSquare({
      length: `${length} m`,
      width: `${width} m`,
      diagonals: [`${printed} m`, `${printed} m`],
    });
    expectPrinted(trueDiagonal.toNumber('m'), printed);
  });

  test('of a parallelogram sheared by 0.1', () => {
    const check = checkSquare({
      length: '30 m',
      width: '20 m',
      diagonals: ['36.13876 m', '35.97235 m'],
    });
    expectPrinted(check.outOfSquare.toNumber('m'), '0.1000');
    expect(check.move?.direction).toBe('left');
  });
});

describe('invented examples, computed by an independent script', () => {
  test('diagonal check', () => {
    const check = checkSquare({ length: '12 m', width: '5 m', diagonals: ['13.02 m', '12.98 m'] });
    expect(check.trueDiagonal.to('m').toString()).toBe('13');
    expectPrinted(check.outOfSquare.toNumber('m'), '0.0217');
    expectPrinted(check.angleError.toNumber('deg'), '0.248');
    expectPrinted(check.meanDiagonal.toNumber('m'), '13.000');
  });

  test('a point by two tapes', () => {
    const found = pointByTapes({
      from: [
        { x: '0 m', y: '0 m', distance: '7.2 m', uncertainty: '3 mm' },
        { x: '10 m', y: '0 m', distance: '6.1 m', uncertainty: '3 mm' },
      ],
      side: 'left',
    });
    expectPrinted(found.point.x.toNumber('m'), '5.7315');
    expectPrinted(found.point.y.toNumber('m'), '4.3577');
    expectPrinted(found.crossingAngle.toNumber('deg'), '97.2');
    expectPrinted(found.ellipse?.position.toNumber('mm') ?? Number.NaN, '4.28');
  });

  test('a tape along the slope', () => {
    const side = planDistance({ taped: '18 m', rise: '1.1 m' });
    expectPrinted(side.plan.toNumber('m'), '17.9664');
    expectPrinted(side.correction.toNumber('mm'), '-33.6');
  });

  test('a tape that hangs free', () => {
    const side = planDistance({
      taped: '15 m',
      hanging: { weightPerLength: '0.15 N/m', tension: '50 N' },
    });
    expectPrinted(side.sagCorrection.toNumber('mm'), '-1.27');
  });
});

test('length along a slope per 100 level', () => {
  // Closed form, derived: 100 sqrt(1 + p^2)
  const table = {
    '1': '100.005000',
    '2': '100.019998',
    '5': '100.124922',
    '8.333333': '100.346621',
    '25': '103.077641',
  };
  for (const [percent, along] of Object.entries(table)) {
    const { plan } = planDistance({ taped: `${along} m`, slope: `${percent}%` });
    expectPrinted(plan.toNumber('m'), '100.000000');
  }
});
