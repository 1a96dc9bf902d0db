import { describe, expect, test } from 'vitest';
import { checkSquare, planDistance, pointByTapes, threeFourFive } from 'settline/stakes';
import { expectPrinted } from '../printed.js';

test('3-4-5 and its multiples', () => {
  // Army carpentry course, squaring building lines, lesson 1, diagonal and 3-4-5 methods. Read;
  // 15-20-25 ft on a framing page.
  const multiples = [
    [3, 4, 5],
    [6, 8, 10],
    [9, 12, 15],
    [12, 16, 20],
    [15, 20, 25],
  ] as const;
  for (const [three, four, five] of multiples) {
    const corner = threeFourFive({ longest: `${five} ft`, step: '1 ft' });
    expect([corner.three, corner.four, corner.five].map((one) => one.to('ft').toNumber())).toEqual([
      three,
      four,
      five,
    ]);
    const square = checkSquare({
      length: `${four} ft`,
      width: `${three} ft`,
      diagonals: [`${five} ft`, `${five} ft`],
      tolerance: '0 ft',
    });
    expect(square.verdict).toBe('pass');
    expect(square.move).toBeNull();
  }
});

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

describe('formula map: invented examples, computed by an independent script', () => {
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

test('two distances lead to a point that two directions fixed', () => {
  // Open-access surveying library, intersection self-study solution, problem (1): points LR and FP
  // from P1, and the length between them. Read. North is y, east is x.
  const { point } = pointByTapes({
    from: [
      { x: '2000 ft', y: '1000 ft', distance: '690.811 ft' },
      { x: '1450.051 ft', y: '836.445 ft', distance: '1053.642 ft' },
    ],
    side: 'left',
  });
  // inputs to 0.001 ft fix the point to about twice that
  expect(Math.abs(point.x.toNumber('ft') - 2435.613)).toBeLessThan(0.002);
  expect(Math.abs(point.y.toNumber('ft') - 463.846)).toBeLessThan(0.002);
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
