// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { test } from 'vitest';
import { areaByOffsets, outlineArea } from 'settline/outline';
import type { LengthUnit } from 'settline/units';
import { expectPrinted } from '../printed.js';

const lengths = (values: readonly number[], unit: LengthUnit) =>
  values.map((value) => ({ value, unit }));

test('seven offsets of an invented walk', () => {
  // Simpson 18.1, trapezoid 17.55.
  const { trapezoid, simpson, difference } = areaByOffsets({
    offsets: lengths([0, 1.9, 2.6, 2.8, 2.4, 1.7, 0.6], 'm'),
    spacing: '1.5 m',
  });
  expectPrinted(trapezoid.toNumber('m2'), '17.55');
  expectPrinted(simpson?.toNumber('m2') ?? 0, '18.1');
  expectPrinted((100 * (difference?.toNumber('m2') ?? 0)) / (simpson?.toNumber('m2') ?? 1), '3.04');
});

test('a bulge over a chord', () => {
  // C = 4, M = 0.5: area 1.3499, arc 4.1646.
  const arcs = [{ edge: 0, bulgeMiddleOrdinate: 0.5 }];
  const points: [number, number][] = [
    [0, 0],
    [4, 0],
    [2, 3],
  ];
  const straight = outlineArea({ outline: { unit: 'm', points } });
  const bulged = outlineArea({ outline: { unit: 'm', points, arcs } });
  expectPrinted(bulged.area.minus(straight.area).toNumber('m2'), '1.3499');
  expectPrinted(bulged.perimeter.minus(straight.perimeter).toNumber('m') + 4, '4.1646');
});

test('a curved walk of constant width', () => {
  // 3 m inside, 1.2 m wide, 80 degrees: 6.0319 m2,
  // edges 4.1888 and 5.8643 m. Width times centre line.
  const half = (40 * Math.PI) / 180;
  const at = (radius: number, sign: number): [number, number] => [
    sign * radius * Math.sin(half),
    radius * Math.cos(half),
  ];
  const outline = {
    unit: 'm',
    points: [at(3, -1), at(3, 1), at(4.2, 1), at(4.2, -1)],
    arcs: [
      { edge: 0, bulgeMiddleOrdinate: -3 * (1 - Math.cos(half)) },
      { edge: 2, bulgeMiddleOrdinate: 4.2 * (1 - Math.cos(half)) },
    ],
  } as const;
  const { area, perimeter } = outlineArea({ outline });
  expectPrinted(area.toNumber('m2'), '6.0319');
  expectPrinted(perimeter.toNumber('m') - 2.4, (4.1888 + 5.8643).toFixed(4));
});
