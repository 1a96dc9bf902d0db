import { describe, expect, test } from 'vitest';
import {
  bondDrift,
  describeRowFit,
  herringboneLines,
  rowFit,
  soldierCurve,
  unitMass,
  unitSuitability,
} from 'settline/materials';
import { CUT_UNIT_LIMITS, UNIT_SHAPE_LIMITS } from 'settline/sources';
import { expectFault } from '../faults.js';
import { formulaOf } from '../formula-of.js';

const mm = (one: { to(unit: 'mm'): { toString(): string } } | null | undefined) =>
  one?.to('mm').toString();

describe('rows without slivers', () => {
  const row = { size: '200 mm', joint: '3 mm' } as const;

  test('nothing left, nothing cut', () => {
    const fit = rowFit({ width: '4.669 m', ...row }); // 23 modules
    expect(fit).toMatchObject({
      kind: 'whole',
      whole: 23,
      cuts: 0,
      piece: null,
      isLargeEnough: true,
    });
    expect(fit.remainder.isZero()).toBe(true);
    expect(fit.options).toHaveLength(1);
    expect(describeRowFit(fit, { system: 'us' })).toBe('23 whole pavers, no cut');
  });

  test('joints at the ends decide what a row holds', () => {
    const kind = (width: string, endJoints: 0 | 1 | 2) => rowFit({ width, ...row, endJoints }).kind;
    expect(kind('4.666 m', 0)).toBe('whole'); // 23 units, 22 joints
    expect(kind('4.669 m', 1)).toBe('whole');
    expect(kind('4.672 m', 2)).toBe('whole'); // 23 units, 24 joints
    expect(kind('4.669 m', 0)).not.toBe('whole');
  });

  test('a cut that is large enough stays one, a sliver becomes two', () => {
    // a third of 200 mm and a joint over 20 modules
    const third = rowFit({ width: { value: '4060', unit: 'mm' }, ...row, minimumPiece: '1/3' });
    expect(third.kind).toBe('whole');
    const one = rowFit({ width: '4163 mm', ...row });
    expect(one).toMatchObject({ kind: 'one-cut', whole: 20, cuts: 1 });
    expect(mm(one.piece)).toBe('100');
    const least = rowFit({ width: '4123 mm', ...row, minimumPiece: 0.3 });
    expect([least.kind, mm(least.piece)]).toEqual(['one-cut', '60']);
    const sliver = rowFit({ width: '4122.9 mm', ...row, minimumPiece: 0.3 });
    expect([sliver.kind, sliver.whole, mm(sliver.piece)]).toEqual(['two-cuts', 19, '129.95']);
  });

  test('what is laid is as wide as the row', () => {
    for (const width of ['4730 mm', '4123 mm', '701 mm', '230 mm', '204 mm', '4062 mm']) {
      for (const endJoints of [0, 1, 2] as const) {
        const limits = { minimum: '1 mm', maximum: '8 mm' };
        const { options } = rowFit({ width, ...row, endJoints, jointLimits: limits });
        for (const { whole, cuts, piece, joint } of options) {
          const pieces = whole + cuts;
          const laid = joint
            .times(pieces - 1 + endJoints)
            .plus(joint.minus(joint))
            .plus((piece ?? joint.minus(joint)).times(cuts));
          const units = laid
            .plus(joint.minus(joint))
            .to('mm')
            .plus(200 * whole);
          expect(units.minus(width.replace(' mm', '')).abs().lt('1e-30')).toBe(true);
        }
      }
    }
  });

  test('joints are spread within limits, the nearer way', () => {
    const limits = { minimum: '2 mm', maximum: '6 mm' };
    const wide = rowFit({ width: '4730 mm', ...row, jointLimits: limits });
    expect(wide).toMatchObject({ kind: 'spread-joints', whole: 23 });
    expect(wide.joint.to('mm').toFixed(2)).toBe('5.65'); // 3 + 61 / 23
    const tight = rowFit({ width: '4850 mm', ...row, jointLimits: limits });
    expect(tight).toMatchObject({ kind: 'spread-joints', whole: 24 });
    expect(tight.joint.to('mm').toFixed(4)).toBe('2.0833'); // 50 / 24
    expect(wide.options.map(({ kind }) => kind)).toEqual(['spread-joints', 'one-cut', 'two-cuts']);
    const narrow = { minimum: '3 mm', maximum: '5 mm' };
    expect(rowFit({ width: '4730 mm', ...row, jointLimits: narrow }).kind).toBe('two-cuts');
    const on = { minimum: '2 mm', maximum: { value: '130/23', unit: 'mm' } } as const;
    expect(rowFit({ width: '4730 mm', ...row, jointLimits: on }).kind).toBe('spread-joints');
  });

  test('narrower than a unit, and where no cut is large enough', () => {
    const narrow = rowFit({ width: '153 mm', ...row });
    expect(narrow).toMatchObject({ kind: 'one-cut', whole: 0, isLargeEnough: true });
    expect(mm(narrow.piece)).toBe('150');
    const none = rowFit({ width: '43 mm', ...row });
    expect([none.isLargeEnough, mm(none.piece)]).toEqual([false, '40']);
    expect(describeRowFit(none, { system: 'metric' })).toBe(
      'one cut of 40 mm; the cut is too small: change the width, the joint or the paver',
    );
    const strict = rowFit({ width: '4100 mm', ...row, minimumPiece: 0.9 });
    expect([strict.isLargeEnough, strict.kind]).toEqual([false, 'two-cuts']);
    expect(rowFit({ width: '203 mm', ...row, endJoints: 0 }).options).toHaveLength(1);
  });

  test('a remainder narrower than a joint is no cut of its own', () => {
    const { kind, options } = rowFit({ width: '4062 mm', ...row });
    expect(kind).toBe('two-cuts');
    expect(options).toHaveLength(1);
  });

  test('in words', () => {
    const say = (
      width: string,
      system: 'us' | 'metric',
      jointLimits?: { minimum: string; maximum: string },
    ) =>
      describeRowFit(
        rowFit({ width, ...row, ...(jointLimits === undefined ? {} : { jointLimits }) }),
        { system },
      );
    expect(say('4730 mm', 'us')).toBe('22 whole pavers between two cuts of 5 1/16 in');
    expect(say('4163 mm', 'metric')).toBe('20 whole pavers and one cut of 100 mm');
    expect(say('4730 mm', 'metric', { minimum: '2 mm', maximum: '6 mm' })).toBe(
      '23 whole pavers, no cut, joints of 5.7 mm',
    );
    expect(say('303 mm', 'metric')).toBe('1 whole paver and one cut of 97 mm');
    expect(say('230 mm', 'metric')).toBe('two cuts of 112 mm');
    expectFault(() => say('4730 mm', 'imperial' as never), 'UNKNOWN_CHOICE');
    for (const wrong of [
      undefined,
      null,
      5,
      {},
      { ...rowFit({ width: '1 m', ...row }), joint: 5 },
    ]) {
      const { message } = expectFault(
        () => describeRowFit(wrong as never, { system: 'us' }),
        'WRONG_TYPE',
      );
      expect(message).toBe('pass the result of rowFit()');
    }
  });

  test.each([
    [() => rowFit({ width: '0 mm', ...row }), 'NOT_POSITIVE'],
    [() => rowFit({ width: '1 m', size: '3 mm', joint: '3 mm' }), 'OUT_OF_RANGE'],
    [() => rowFit({ width: '6 mm', ...row, endJoints: 2 }), 'OUT_OF_RANGE'],
    [() => rowFit({ width: '1 m', ...row, endJoints: 3 as never }), 'UNKNOWN_CHOICE'],
    [() => rowFit({ width: '1 m', ...row, minimumPiece: 0 }), 'NOT_POSITIVE'],
    [() => rowFit({ width: '1 m', ...row, minimumPiece: 2 }), 'OUT_OF_RANGE'],
    [
      () => rowFit({ width: '1 m', ...row, jointLimits: { minimum: '5 mm', maximum: '2 mm' } }),
      'LIMITS_CONTRADICT',
    ],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('shape for the use', () => {
  const unit = { length: '240 mm', thickness: '60 mm' } as const;

  test('length to thickness: on the limit passes, slightly over fails', () => {
    const ok = (
      use: 'pedestrian' | 'residential-driveway' | 'parking-or-residential-street',
      more = {},
    ) => unitSuitability({ ...unit, use, ...more }).verdict === 'pass';
    expect(ok('pedestrian')).toBe(true);
    expect(ok('residential-driveway')).toBe(true);
    expect(ok('parking-or-residential-street')).toBe(false);
    expect(ok('residential-driveway', { guide: 'permeable' })).toBe(false);
    expect(ok('pedestrian', { guide: 'permeable' })).toBe(true);
    expect(ok('pedestrian', { length: '240.0001 mm' })).toBe(false);
    const { ratio, maximumRatio } = unitSuitability({ ...unit, use: 'pedestrian' });
    expect([ratio.toString(), maximumRatio.toString()]).toEqual(['4', '4']);
  });

  test('cut pieces: a share where vehicles run, a width elsewhere', () => {
    const cut = (use: 'pedestrian' | 'residential-driveway', smallestCut: object, more = {}) =>
      unitSuitability({ ...unit, use, smallestCut, ...more }).findings[1];
    expect(cut('residential-driveway', { share: '1/3' })?.verdict).toBe('pass');
    expect(cut('residential-driveway', { share: 0.33 })).toMatchObject({
      rule: 'cut-share',
      verdict: 'fail',
      source: 'paver-tolerances',
    });
    const { closureShare } = CUT_UNIT_LIMITS;
    const own = cut(
      'residential-driveway',
      { share: 0.3 },
      { minimumCutShare: closureShare.value },
    );
    expect(own).toMatchObject({ verdict: 'pass', source: null });
    expect(cut('pedestrian', { width: '3/8 in' })?.verdict).toBe('pass');
    expect(cut('pedestrian', { width: '9.5 mm' })).toMatchObject({
      rule: 'cut-width',
      verdict: 'fail',
    });
    expect(cut('pedestrian', { share: 0.9 })?.verdict).toBeNull();
    expect(cut('residential-driveway', {})?.note).toContain('This was not checked');
  });

  test('says why, and from which source', () => {
    const { findings, working } = unitSuitability({
      length: '300 mm',
      thickness: '60 mm',
      use: 'residential-driveway',
    });
    expect(findings[0]?.note).toContain('more than 4 times as long');
    expect(findings.map(({ source }) => source)).toEqual(['paver-tolerances', 'paver-tolerances']);
    expect(working[0]?.source).toBe('paver-tolerances');
    expect(UNIT_SHAPE_LIMITS.permeable.pedestrian.source).toBe('permeable-tolerances');
  });

  test.each([
    [() => unitSuitability({ ...unit, use: 'tank' as never }), 'UNKNOWN_CHOICE'],
    [() => unitSuitability({ ...unit, use: 'pedestrian', guide: 'x' as never }), 'UNKNOWN_CHOICE'],
    [() => unitSuitability({ ...unit, thickness: '0 mm', use: 'pedestrian' }), 'NOT_POSITIVE'],
    [
      () => unitSuitability({ ...unit, use: 'pedestrian', smallestCut: { share: 2 } }),
      'OUT_OF_RANGE',
    ],
    [() => unitSuitability({ ...unit, use: 'pedestrian', minimumCutShare: 0 }), 'NOT_POSITIVE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('courses on a curve', () => {
  const soldier = {
    unit: { length: '200 mm', width: '100 mm' },
    joint: '3 mm',
    maximumJoint: '5 mm',
  } as const;

  test('at the minimum radius the outer joint is exactly its limit', () => {
    const { minimumRadius } = soldierCurve(soldier);
    expect(minimumRadius.to('m').toString()).toBe('10.3');
    const on = soldierCurve({ ...soldier, radius: minimumRadius }).atRadius;
    expect([mm(on?.outerJoint), on?.isWithinLimit]).toEqual(['5', true]);
    const under = soldierCurve({ ...soldier, radius: '10.299999 m' }).atRadius;
    expect(under?.isWithinLimit).toBe(false);
    expect(soldierCurve(soldier).atRadius).toBeNull();
  });

  test('tapered units have even joints: the circle closes inside and outside', () => {
    const { atRadius, working } = soldierCurve({ ...soldier, radius: '3 m' });
    // (w - taper + j) / (w + j) = R / (R + d)
    expect(atRadius?.taper.to('mm').toFixed(4)).toBe('6.4375');
    expect(atRadius?.circle.units).toBe(183); // 2 pi 3 / 0.103 = 183.0057
    expect(atRadius?.circle.innerJoint.to('mm').toFixed(4)).toBe('3.0030');
    expect(atRadius?.chordGap.to('mm').toFixed(4)).toBe('0.4167');
    expect(working).toHaveLength(2);
  });

  test('the smallest circle is as wide as a unit and its joint', () => {
    const { atRadius } = soldierCurve({ ...soldier, radius: '51.5 mm' });
    expect(atRadius?.circle.units).toBe(3); // pi
  });

  test('a sailor course bends more easily and stands further off', () => {
    const sailor = soldierCurve({ ...soldier, course: 'sailor', radius: '3 m' });
    expect(sailor.minimumRadius.to('m').toString()).toBe('10.15');
    expect(sailor.atRadius?.chordGap.to('mm').toFixed(4)).toBe('1.6671');
    expect(
      soldierCurve({ ...soldier, course: 'header' })
        .minimumRadius.to('m')
        .toString(),
    ).toBe('10.3');
  });

  test.each([
    [() => soldierCurve({ ...soldier, maximumJoint: '3 mm' }), 'OUT_OF_RANGE'],
    [() => soldierCurve({ ...soldier, radius: '51.4 mm' }), 'OUT_OF_RANGE'],
    [
      () =>
        soldierCurve({
          unit: { length: '10 mm', width: '10 mm' },
          joint: '99 mm',
          maximumJoint: '100 mm',
          radius: '6 mm',
        }),
      'OUT_OF_RANGE',
    ],
    [() => soldierCurve({ ...soldier, radius: '0 mm' }), 'NOT_POSITIVE'],
    [() => soldierCurve({ ...soldier, course: 'rowlock' as never }), 'UNKNOWN_CHOICE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('drift of the bond', () => {
  const line = { tolerance: '12 mm', module: '100 mm' } as const;

  test('a bias adds up, exactly to the limit', () => {
    expect(bondDrift({ ...line, bias: '0.5 mm' }).courses).toBe(24);
    expect(bondDrift({ ...line, bias: '0.5000001 mm' }).courses).toBe(23);
    const drift = bondDrift({ ...line, bias: '0.7 mm' });
    expect([drift.courses, mm(drift.distance), mm(drift.drift)]).toEqual([17, '1700', '11.9']);
    expect(bondDrift({ ...line, bias: '13 mm' }).courses).toBe(0);
  });

  test('scatter grows with the root, and both together', () => {
    expect(bondDrift({ ...line, scatter: '2 mm' })).toMatchObject({ courses: 36 });
    expect(mm(bondDrift({ ...line, scatter: '2 mm' }).drift)).toBe('12');
    // 25 x 0.1 + 1.9 x 5 = 12
    const both = bondDrift({ ...line, bias: '0.1 mm', scatter: '1.9 mm' });
    expect([both.courses, mm(both.drift)]).toEqual([25, '12']);
    expect(bondDrift({ ...line, bias: '0.1 mm', scatter: '1.91 mm' }).courses).toBe(24);
  });

  test.each([
    [() => bondDrift(line), 'REQUIRED'],
    [() => bondDrift({ ...line, bias: '-1 mm' }), 'NEGATIVE'],
    [() => bondDrift({ ...line, bias: '1 mm', tolerance: '0 mm' }), 'NOT_POSITIVE'],
    [() => bondDrift({ ...line, bias: { value: '1e-20', unit: 'mm' } }), 'CAPACITY_EXCEEDED'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('herringbone at 45 degrees', () => {
  test('closes where two and their joints are as long as one', () => {
    const fits = herringboneLines({ unit: { length: '200 mm', width: '98.5 mm' }, joint: '3 mm' });
    expect([mm(fits.misfit), fits.isWithinTolerance, mm(fits.fittingJoint)]).toEqual([
      '0',
      true,
      '3',
    ]);
    expect(fits.note).toContain('the pattern closes');
    const off = herringboneLines({ unit: { length: '200 mm', width: '100 mm' }, joint: '3 mm' });
    expect([mm(off.misfit), off.isWithinTolerance, mm(off.fittingJoint)]).toEqual([
      '-3',
      false,
      '0',
    ]);
    expect(off.note).toContain('longer than one');
    const short = herringboneLines({ unit: { length: '200 mm', width: '90 mm' }, joint: '3 mm' });
    expect(short.note).toContain('shorter than one');
    const wide = herringboneLines({ unit: { length: '200 mm', width: '101 mm' }, joint: '3 mm' });
    expect(wide.fittingJoint).toBeNull();
  });

  test('a tolerance takes up a small misfit, to the limit', () => {
    const unit = { length: '200 mm', width: '100 mm' };
    const ok = (tolerance: string) =>
      herringboneLines({ unit, joint: '3 mm', tolerance }).isWithinTolerance;
    expect([ok('3 mm'), ok('2.9999 mm')]).toEqual([true, false]);
  });

  test('lines from the axis to the edge', () => {
    const unit = { length: '200 mm', width: '100 mm' };
    const { lines, spacing, working } = herringboneLines({ unit, joint: '3 mm', width: '1 m' });
    // 500 / 145.66 = 3.43
    expect(lines).toHaveLength(4);
    expect(lines[0]?.isZero()).toBe(true);
    expect(lines[3]?.equals(spacing.times(3))).toBe(true);
    expect(formulaOf(working[1])).toBe('s = (w + j) * sqrt(2)');
    expect(herringboneLines({ unit, joint: '3 mm' }).lines).toEqual([]);
    expectFault(
      () => herringboneLines({ unit, joint: '3 mm', width: '90 km' }),
      'CAPACITY_EXCEEDED',
    );
    expectFault(() => herringboneLines({ unit, joint: '-3 mm' }), 'NEGATIVE');
  });
});

describe('mass of units', () => {
  const block = {
    unit: { length: '200 mm', width: '100 mm' },
    thickness: '80 mm',
    density: '2250 kg/m3',
  } as const;

  test('alone, by the square metre, packed', () => {
    const { unit, squareMetre, packed, cautions } = unitMass({
      ...block,
      pallet: { unitsPerLayer: 36, layers: 11, empty: '20 kg' },
    });
    expect(unit.to('kg').toString()).toBe('3.6');
    expect(squareMetre.to('kg').toString()).toBe('180');
    expect(packed?.layer.to('kg').toString()).toBe('129.6');
    expect(packed?.pallet.to('kg').toString()).toBe('1445.6');
    expect(packed?.units).toBe(396);
    expect(packed?.covers.to('m2').toString()).toBe('7.92');
    expect(cautions.map(({ id }) => id)).toEqual(['handling', 'loads']);
  });

  test('joints make a square metre lighter', () => {
    const { squareMetre, packed } = unitMass({ ...block, joint: '3 mm' });
    expect(squareMetre.to('kg').toFixed(4)).toBe('172.1747');
    expect(packed).toBeNull();
  });

  test.each([
    [() => unitMass({ ...block, pallet: { unitsPerLayer: 1.5, layers: 2 } }), 'NOT_WHOLE'],
    [() => unitMass({ ...block, pallet: { unitsPerLayer: 1, layers: 0 } }), 'NOT_POSITIVE'],
    [() => unitMass({ ...block, density: '7 t/m3' }), 'OUT_OF_RANGE'],
    [
      () => unitMass({ ...block, pallet: { unitsPerLayer: 1, layers: 1, empty: '-1 kg' } }),
      'NEGATIVE',
    ],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});
