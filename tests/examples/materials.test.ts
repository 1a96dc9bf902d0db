// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import {
  baseOrder,
  bedRange,
  beddingSand,
  bondDrift,
  borderCourse,
  edgeRestraint,
  geotextile,
  herringboneLines,
  jointSand,
  jointTopUp,
  orderPacks,
  rowFit,
  screedLevel,
  soldierCurve,
  unitCount,
  unitMass,
  unitSuitability,
  yieldCheck,
  type LayingPattern,
} from 'settline/materials';
import { widenOutline } from 'settline/outline';
import { expectMisprint, expectPrinted } from '../printed.js';

const drive = {
  unit: 'm',
  points: [
    [0, 0],
    [12, 0],
    [12, 5],
    [0, 5],
  ],
} as const;
const block = { length: '200 mm', width: '100 mm' } as const;

describe('invented worked examples', () => {
  test('base: 60 m2 widened by 0.35 m, 0.2 m of 2150 kg/m3, 5 % moisture, ratio 0.8', () => {
    const { area } = widenOutline({ outline: drive, by: '0.35 m' });
    expectPrinted(area.toNumber('m2'), '72.39');
    const stone = (on: typeof area) =>
      baseOrder({
        parts: [{ area: on, thickness: '0.2 m' }],
        compactedDryDensity: '2150 kg/m3',
        compactedPerLoose: 0.8,
        moisture: 0.05,
      });
    const base = stone(area);
    expectPrinted(base.compacted.toNumber('m3'), '14.478');
    expectPrinted(base.loose.toNumber('m3'), '18.098');
    expectPrinted(base.dryMass.toNumber('t'), '31.13');
    expectPrinted(base.deliveredMass.toNumber('t'), '32.68');
    // left out: the extension of the base
    const short = widenOutline({ outline: drive, by: '0 m' }).area;
    expectPrinted(
      100 * (1 - stone(short).loose.toNumber('m3') / base.loose.toNumber('m3')),
      '17.1',
    );
  });

  test('tickets: 36.4 t at 5 % for 14.48 m3 of 2.15 t/m3', () => {
    const check = yieldCheck({
      tickets: ['36.4 t'],
      moisture: 0.05,
      compactedVolume: '14.48 m3',
      expectedDryDensity: '2.15 t/m3',
    });
    expectPrinted(check.impliedDryDensity.toNumber('t/m3'), '2.394');
    expectPrinted(check.ratio, '1.114');
    expect(check.verdict).toBe('fail');
  });

  test('bedding: 60 m2 of 25 mm, 1700 and 1500 kg/m3, 5 % moisture, a quarter of bulking', () => {
    const sand = beddingSand({
      area: '60 m2',
      thickness: '0.025 m',
      compactedDryDensity: '1700 kg/m3',
      looseDryDensity: '1500 kg/m3',
      moisture: 0.05,
      bulking: 0.25,
    });
    expectPrinted(sand.compacted.toNumber('m3'), '1.5');
    expectPrinted(sand.dryMass.toNumber('t'), '2.55');
    expectPrinted(sand.dryLoose.toNumber('m3'), '1.7');
    expectPrinted(sand.delivered.toNumber('m3'), '2.125');
    // 2.6775: the example cuts the last digit off
    expectPrinted(sand.deliveredMass.toNumber('t'), '2.677');
  });

  test('laying high: 60 mm units, 25 mm bed, 6 mm of settlement', () => {
    const level = screedLevel({ paver: '60 mm', bedding: '25 mm', settlement: '6 mm' });
    expect(level.screedBelowFinish.to('mm').toString()).toBe('54');
    expect(level.looseBed.to('mm').toString()).toBe('31');
    expect(level.laidAboveFinish.to('mm').toString()).toBe('6');
    expect(level.baseTopBelowFinish.to('mm').toString()).toBe('85');
  });

  test('bed: base off by -9, 4, 7 and -12 mm', () => {
    const range = bedRange({
      nominal: '25 mm',
      deviations: [-9, 4, 7, -12].map((mm, id) => ({ id: `${id}`, deviation: `${mm} mm` })),
      limits: { minimum: '20 mm', maximum: '30 mm' },
    });
    expect(range.thickest.to('mm').toString()).toBe('37');
    expect(range.thinnest.to('mm').toString()).toBe('18');
  });

  test('units: a soldier course round 12 x 5 m, 200 x 100 mm with 3 mm joints', () => {
    const count = unitCount({ area: '60 m2', unit: block, joint: '3 mm' });
    expectPrinted(count.perArea, '47.826');
    // nominal size taken for the module
    const nominal = unitCount({ area: '60 m2', unit: block, joint: '0 mm' });
    expectPrinted(100 * (nominal.perArea / count.perArea - 1), '4.55');
    const border = borderCourse({ outline: drive, unit: block, joint: '3 mm', course: 'soldier' });
    expectPrinted(border.centreLine.toNumber('m'), '33.2');
    // 11.8 / 0.103 = 114.6 and 4.8 / 0.103 = 46.6
    expect(border.units).toBe(2 * 115 + 2 * 47);
    expectPrinted(border.field.area.toNumber('m2'), '53.36');
    const field = unitCount({ area: border.field.area, unit: block, joint: '3 mm' });
    expect(field.whole).toBe(2553);
  });

  test.each([
    ['12 m', '5 m', 'running-bond', '220', '3.67'],
    ['12 m', '5 m', 'herringbone-90', '255', '4.25'],
    ['12 m', '5 m', 'herringbone-45', '360.6', '6.01'],
    ['10 m', '1.2 m', 'running-bond', '124', '10.33'],
    ['10 m', '1.2 m', 'herringbone-90', '168', '14.00'],
    ['10 m', '1.2 m', 'herringbone-45', '237.6', '19.80'],
  ] as const)('cuts: %s by %s, %s: %s units', (length, width, pattern, cut, percent) => {
    const edge = [
      { length },
      { length: width, angle: '90 deg' },
      { length },
      { length: width, angle: '90 deg' },
    ];
    const area = {
      value: Number.parseFloat(length) * Number.parseFloat(width),
      unit: 'm2',
    } as const;
    const count = unitCount({ area, unit: block, joint: '0 mm', pattern, edge });
    expectPrinted(2 * count.extra, cut);
    expect(count.cut).toBe(Math.ceil(2 * count.extra));
    expectPrinted(100 * count.extraShare, percent);
  });

  test.each([
    // percent of extra units that clipping a laid pattern gave, mean of twelve random starts
    ['12 m', '5 m', 'running-bond', 3.7],
    ['12 m', '5 m', 'herringbone-90', 4.28],
    ['12 m', '5 m', 'herringbone-45', 6.27],
    ['10 m', '1.2 m', 'running-bond', 10.5],
    ['10 m', '1.2 m', 'herringbone-90', 14.17],
    ['10 m', '1.2 m', 'herringbone-45', 20.07],
  ] as const)('cuts by clipping: %s by %s, %s: %d percent', (length, width, pattern, percent) => {
    expect(100 * rectangle(length, width, pattern).extraShare).toBeGreaterThan(percent * 0.95);
    expect(100 * rectangle(length, width, pattern).extraShare).toBeLessThan(percent);
  });

  const rectangle = (length: string, width: string, pattern: LayingPattern) => {
    const edge = [0, 1].flatMap(() => [{ length }, { length: width, angle: '90 deg' }]);
    const area = {
      value: Number.parseFloat(length) * Number.parseFloat(width),
      unit: 'm2',
    } as const;
    return unitCount({ area, unit: block, joint: '0 mm', pattern, edge });
  };

  test('row: 4.73 m of 203 mm modules', () => {
    const row = rowFit({ width: '4.73 m', size: '200 mm', joint: '3 mm' });
    expect(row.maximumWhole).toBe(23);
    expectPrinted(row.remainder.toNumber('m'), '0.0610');
    expect([row.kind, row.whole]).toEqual(['two-cuts', 22]);
    // the example gives 0.132 m each, the joint of the piece counted in: 129 mm are cut
    expectPrinted((row.piece?.toNumber('m') ?? 0) + 0.003, '0.132');
    const spread = rowFit({
      width: '4.73 m',
      size: '200 mm',
      joint: '3 mm',
      jointLimits: { minimum: '2 mm', maximum: '6 mm' },
    });
    expectPrinted(spread.joint.toNumber('mm') - 3, '2.65');
  });

  test('soldiers on a curve: R 3 m, 200 mm deep, 100 mm wide, joints 3 to 5 mm', () => {
    const { minimumRadius, atRadius } = soldierCurve({
      unit: block,
      joint: '3 mm',
      maximumJoint: '5 mm',
      radius: '3 m',
    });
    expectPrinted(minimumRadius.toNumber('m'), '10.3');
    expectPrinted(atRadius?.outerJoint.toNumber('mm') ?? 0, '9.87');
    // the example takes the opening of the joint, 6.87 mm, for the taper; but the units are widest outside:
    // what the inner end must lose is R / (R + d) of it
    expectMisprint(atRadius?.taper.toNumber('mm') ?? 0, '6.87', '6.44');
  });

  test('joint sand: 60 m2, 60 mm units, 3 mm joints and recess, a tenth of waste, 22.7 kg bags', () => {
    const sand = jointSand({
      area: '60 m2',
      unit: block,
      joint: '3 mm',
      depth: '60 mm',
      recess: '3 mm',
      density: '1600 kg/m3',
      waste: 0.1,
      bag: '22.7 kg',
    });
    expectPrinted(sand.jointShare, '0.043474');
    expectPrinted(sand.volume.toNumber('m3'), '0.1487');
    expectPrinted(sand.mass.toNumber('kg'), '261.7');
    expect(sand.bags).toBe(12);
    // (1 / (l + j) + 1 / (w + j)) j counts the corners twice
    const twice = 0.003 * (1 / 0.203 + 1 / 0.103);
    expectPrinted(100 * (twice / sand.jointShare - 1), '0.99');
  });

  test('topping up: 15 mm lost', () => {
    const again = jointTopUp({
      area: '60 m2',
      unit: block,
      joint: '3 mm',
      depthLost: '0.015 m',
      density: '1600 kg/m3',
    });
    expectPrinted(again.mass.toNumber('kg'), '62.6');
    expect(again.verdict).toBe('fail');
  });

  test('restraint: 12, 5 and 7.4 m in pieces of 2.4 m, spikes every 0.3 m', () => {
    const { pieces, spikes } = edgeRestraint({
      runs: ['12 m', '5 m', '7.4 m'],
      piece: '2.4 m',
      spikeSpacing: '0.3 m',
    });
    expect([pieces, spikes]).toEqual([12, 85]);
  });

  test('geotextile: 12.7 x 5.7 m with 0.3 m upturns, rolls of 3.81 x 110 m, laps of 0.6 m', () => {
    const fabric = geotextile({
      length: '12.7 m',
      width: '5.7 m',
      upturn: '0.3 m',
      rollWidth: '3.81 m',
      rollLength: '110 m',
      overlap: '0.6 m',
    });
    expect([fabric.strips, fabric.rolls]).toEqual([2, 1]);
    expectPrinted(fabric.stripLength.toNumber('m'), '13.3');
    expectPrinted(fabric.totalLength.toNumber('m'), '26.6');
    expectPrinted(fabric.fabricArea.toNumber('m2'), '101.3');
    expectPrinted(fabric.coveredArea.toNumber('m2'), '83.8');
  });

  test('order: 3129 units, 40 a layer, 10 layers a pallet', () => {
    const packs = [
      { name: 'layer', holds: 40 },
      { name: 'pallet', holds: 10 },
    ];
    const order = orderPacks({ units: 3129, packs });
    expect(order.packs.map(({ count, rounded }) => [count, rounded.ordered])).toEqual([
      [79, 3160],
      [8, 3200],
    ]);
    expect(order.surplus).toBe(31);
  });

  test('order: a tenth and two tenths of a load in tenths are three', () => {
    const packs = [{ name: 'tenth', holds: '0.1 m3' }];
    expect(orderPacks({ volume: '0.3 m3', packs }).packs[0]?.count).toBe(3);
  });

  test('drift: 0.4 mm a joint, 13 mm, 103 mm courses', () => {
    const { courses, distance } = bondDrift({
      bias: '0.4 mm',
      tolerance: '13 mm',
      module: '0.103 m',
    });
    expect(courses).toBe(32);
    expectPrinted(distance.toNumber('m'), '3.3');
  });

  test('herringbone lines: 200 x 100 mm with 3 mm joints', () => {
    const lines = herringboneLines({ unit: block, joint: '3 mm' });
    expectPrinted(lines.spacing.toNumber('m'), '0.1457');
    expect(lines.misfit.to('mm').toString()).toBe('-3');
    expectPrinted(lines.fittingWidth.toNumber('m'), '0.0985');
  });

  test('shape: 300 x 60 mm on a driveway', () => {
    const slab = unitSuitability({
      length: '300 mm',
      thickness: '60 mm',
      use: 'residential-driveway',
    });
    expect([slab.ratio, slab.verdict]).toEqual([5, 'fail']);
  });

  test('mass: 200 x 100 x 60 mm of 2300 kg/m3, 400 on a pallet', () => {
    const { unit, squareMetre, packed } = unitMass({
      unit: block,
      thickness: '60 mm',
      density: '2300 kg/m3',
      pallet: { unitsPerLayer: 40, layers: 10 },
    });
    expectPrinted(unit.toNumber('kg'), '2.76');
    expectPrinted(squareMetre.toNumber('kg'), '138');
    expectPrinted(packed?.pallet.toNumber('t') ?? 0, '1.104');
  });
});
