// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import {
  arcFromChord,
  chordOffsets,
  circleThrough,
  fillet,
  stakeSpacing,
  tangentOffsets,
} from 'settline/stakes';

import { expectPrinted } from '../printed.js';

test('middle ordinate under a straightedge of 3 m', () => {
  // Closed form, derived: M = R - sqrt(R^2 - c^2 / 4)
  const printed = {
    5: '230.303993',
    10: '113.140033',
    25: '45.040573',
    50: '22.505065',
    100: '11.250633',
    300: '3.750023',
  };
  for (const [radius, ordinate] of Object.entries(printed)) {
    const { rows } = tangentOffsets({ radius: `${radius} m`, length: '1.5 m', spacing: '1.5 m' });
    expectPrinted(rows[1]?.offset.toNumber('mm') ?? Number.NaN, ordinate);
    const back = arcFromChord({ chord: '3 m', middleOrdinate: rows[1]?.offset ?? '0 m' });
    expect(back.radius?.toNumber('m')).toBeCloseTo(Number(radius), 12);
  }
});

describe('invented examples, computed by an independent script', () => {
  test('arc from chord', () => {
    const arc = arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m', uncertainty: '5 mm' });
    expect(arc.radius?.to('m').toString()).toBe('4.25');
    expectPrinted(arc.radiusUncertainty?.toNumber('mm') ?? Number.NaN, '37.5');
  });

  test('offsets from the chord and the tangent', () => {
    const { rows } = chordOffsets({ chord: '4 m', middleOrdinate: '0.5 m', spacing: '0.5 m' });
    const fromMiddle = rows.slice(4).map(({ offset }) => offset.toNumber('m'));
    ['0.5000', '0.4705', '0.3807', '0.2265', '0.0000'].forEach((printed, k) => {
      expectPrinted(fromMiddle[k] ?? Number.NaN, printed);
    });
    const tangent = tangentOffsets({ radius: '4.25 m', length: '1 m', spacing: '1 m' });
    expectPrinted(tangent.rows[1]?.offset.toNumber('m') ?? Number.NaN, '0.1193');
  });

  test('stake spacing on a curve', () => {
    const { chord } = stakeSpacing({ radius: '6 m', deviation: '3 mm' });
    expectPrinted(chord.toNumber('m'), '0.3794');
    // the approximate form sqrt(8 R d) is printed as 0.3795
    expect(Math.sqrt(8 * 6 * 0.003) - chord.toNumber('m')).toBeCloseTo(0.00005, 5);
  });

  test('rounded corner', () => {
    const corner = fillet({ turn: '72 deg', radius: '3 m' });
    expectPrinted(corner.tangent.toNumber('m'), '2.1796');
    expectPrinted(corner.arcLength.toNumber('m'), '3.7699');
    expectPrinted(corner.external.toNumber('m'), '0.7082');
    expectPrinted(corner.cornerArea.toNumber('m2'), '0.884');
  });

  test('circle through three stakes', () => {
    const { centre, radius, residuals } = circleThrough({
      points: [
        { x: '0 m', y: '0 m' },
        { x: '2 m', y: '0.42 m' },
        { x: '4 m', y: '0.1 m' },
      ],
    });
    expectPrinted(centre.x.toNumber('m'), '2.1306');
    expectPrinted(centre.y.toNumber('m'), '-5.1738');
    expectPrinted(radius.toNumber('m'), '5.5953');
    expect(residuals.every((one) => one.isZero())).toBe(true);
  });
});
