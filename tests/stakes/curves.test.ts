import { describe, expect, test } from 'vitest';
import {
  arcFromChord,
  chordOffsets,
  deflectionTable,
  fillet,
  stakeSpacing,
  tangentOffsets,
  threeFourFive,
} from 'settline/stakes';
import { expectFault, faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';

const mm = (
  of: readonly { readonly offset: { to(unit: 'mm'): { toFixed(places: number): string } } }[],
) => of.map(({ offset }) => offset.to('mm').toFixed(1));

describe('arc from chord', () => {
  test('half a circle', () => {
    const arc = arcFromChord({ chord: '6 m', middleOrdinate: '3 m' });
    expect(arc.radius?.to('m').toString()).toBe('3');
    expect(arc.centralAngle.to('deg').toFixed(20)).toBe('180.00000000000000000000');
    expect(arc.arcLength.toNumber('m')).toBeCloseTo(3 * Math.PI, 14);
    expect(arc.segmentArea.toNumber('m2')).toBeCloseTo(4.5 * Math.PI, 13);
    expect(arc.isMoreThanHalf).toBe(false);
    expect(arc.radiusPerOrdinate).toBe(0);
  });

  test('more than half a circle: chord 8, ordinate 8', () => {
    // R = 64 / 64 + 4 = 5; the centre is 3 inside the chord
    const arc = arcFromChord({ chord: '8 m', middleOrdinate: '8 m' });
    expect(arc.radius?.to('m').toString()).toBe('5');
    expect(arc.isMoreThanHalf).toBe(true);
    const angle = 2 * Math.PI - 2 * Math.asin(0.8);
    expect(arc.centralAngle.toNumber('rad')).toBeCloseTo(angle, 14);
    expect(arc.segmentArea.toNumber('m2')).toBeCloseTo((25 * angle + 24) / 2, 13);
  });

  test('a straight edge has no radius', () => {
    const edge = arcFromChord({ chord: '12 ft', middleOrdinate: '0 in' });
    expect(edge).toMatchObject({
      isStraight: true,
      radius: null,
      radiusPerOrdinate: null,
      isFlat: true,
      radiusUncertainty: null,
    });
    expect(edge.arcLength.to('ft').toString()).toBe('12');
    expect(edge.segmentArea.isZero()).toBe(true);
    expect(edge.centralAngle.isZero()).toBe(true);
  });

  test('a flat arc is flagged, with the uncertainty of its radius', () => {
    const arc = arcFromChord({ chord: '4 m', middleOrdinate: '20 mm', uncertainty: '1 mm' });
    expect(arc.isFlat).toBe(true);
    expect(arc.radiusPerOrdinate).toBe(-4999.5);
    expect(arc.radiusUncertainty?.to('m').toString()).toBe('4.9995');
    expect(arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m' }).isFlat).toBe(false);
    // 10 degrees is the mark: M = C / 2 tan(2.5 deg) = 87.3 mm for 4 m
    expect(arcFromChord({ chord: '4 m', middleOrdinate: '87.3 mm' }).isFlat).toBe(true);
    expect(arcFromChord({ chord: '4 m', middleOrdinate: '87.4 mm' }).isFlat).toBe(false);
  });

  testRefusals(arcFromChord, { chord: '4 m', middleOrdinate: '0.5 m', uncertainty: '1 mm' }, [
    ['chord', '0 m', 'NOT_POSITIVE'],
    ['chord', '11 km', 'OUT_OF_RANGE'],
    ['chord', 4, 'UNIT_MISSING'],
    ['middleOrdinate', '-1 mm', 'NEGATIVE'],
    ['middleOrdinate', undefined, 'REQUIRED'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('offsets', () => {
  test('from the chord: marks, the middle and the end, each once', () => {
    // R = 5, 3-4-5: at 1 m from the middle sqrt(24) - 4, at the ends 0
    const { radius, rows } = chordOffsets({ chord: '6 m', middleOrdinate: '1 m', spacing: '2 m' });
    expect(radius.to('m').toString()).toBe('5');
    expect(rows.map(({ along }) => along.to('m').toString())).toEqual(['0', '2', '3', '4', '6']);
    expect(rows.map(({ fromMiddle }) => fromMiddle.to('m').toString())).toEqual([
      '-3',
      '-1',
      '0',
      '1',
      '3',
    ]);
    expect(mm(rows)).toEqual(['0.0', '899.0', '1000.0', '899.0', '0.0']);
  });

  test('from the tangent, to the radius and no further', () => {
    const { rows } = tangentOffsets({ radius: '5 m', length: '5 m', spacing: '3 m' });
    expect(mm(rows)).toEqual(['0.0', '1000.0', '5000.0']);
  });

  testRefusals(chordOffsets, { chord: '6 m', middleOrdinate: '1 m', spacing: '2 m' }, [
    ['middleOrdinate', '3.001 m', 'OUTSIDE_ARC'],
    ['middleOrdinate', '0 m', 'NOT_POSITIVE'],
    ['spacing', '2 mm', 'OUT_OF_RANGE'],
    ['spacing', '0 m', 'NOT_POSITIVE'],
    ['chord', '-1 m', 'NOT_POSITIVE'],
  ]);
  testRefusals(tangentOffsets, { radius: '5 m', length: '5 m', spacing: '3 m' }, [
    ['length', '5.001 m', 'OUTSIDE_ARC'],
    ['spacing', '2 mm', 'OUT_OF_RANGE'],
    ['radius', '1001 km', 'OUT_OF_RANGE'],
  ]);
});

describe('deflection table', () => {
  test('pieces from the beginning of the arc', () => {
    const table = deflectionTable({ radius: '10 m', turn: '90 deg', spacing: '5 m' });
    expect(table.rows.map(({ arc }) => arc.to('m').toFixed(3))).toEqual([
      '0.000',
      '5.000',
      '10.000',
      '15.000',
      '15.708',
    ]);
    const last = table.rows.at(-1);
    expect(last?.deflection.to('deg').toFixed(12)).toBe('45.000000000000');
    expect(last?.chord.toNumber('m')).toBeCloseTo(Math.sqrt(200), 12);
    expect(last?.fromPrevious.arc.to('m').toFixed(3)).toBe('0.708');
    expect(table.rows[0]?.chord.isZero()).toBe(true);
    // elements of a square corner of 10 m
    expect(table.tangent.toNumber('m')).toBeCloseTo(10, 12);
    expect(table.external.toNumber('m')).toBeCloseTo(10 * (Math.SQRT2 - 1), 12);
    expect(table.middleOrdinate.toNumber('m')).toBeCloseTo(10 * (1 - Math.SQRT1_2), 12);
    expect(table.cornerArea.toNumber('m2')).toBeCloseTo(100 - 25 * Math.PI, 11);
  });

  test('an end on a whole step is not doubled', () => {
    const table = deflectionTable({ radius: '10 m', turn: '1 rad', spacing: '5 m' });
    expect(table.rows.map(({ arc }) => arc.to('m').toString())).toEqual(['0', '5', '10']);
  });

  test('whole stations: the first and the last piece are odd', () => {
    const table = deflectionTable({
      radius: '10 m',
      turn: '90 deg',
      spacing: '5 m',
      start: '3 m',
      wholeStations: true,
    });
    expect(table.rows.map(({ station }) => station.to('m').toFixed(3))).toEqual([
      '3.000',
      '5.000',
      '10.000',
      '15.000',
      '18.708',
    ]);
    expect(table.rows[1]?.fromPrevious.arc.to('m').toString()).toBe('2');
  });

  test('a start on a whole station is not doubled', () => {
    const table = deflectionTable({
      radius: '10 m',
      turn: '90 deg',
      spacing: '5 m',
      start: '-5 m',
      wholeStations: true,
    });
    expect(table.rows.map(({ station }) => station.to('m').toFixed(1))).toEqual([
      '-5.0',
      '0.0',
      '5.0',
      '10.0',
      '10.7',
    ]);
  });

  testRefusals(
    deflectionTable,
    { radius: '10 m', turn: '90 deg', spacing: '5 m', intersection: '100 m', wholeStations: false },
    [
      ['start', '1 m', 'CONFLICTING_FIELDS', 'intersection'],
      ['turn', '180 deg', 'OUT_OF_RANGE'],
      ['turn', '0 deg', 'NOT_POSITIVE'],
      ['turn', '-20 deg', 'NOT_POSITIVE'],
      ['spacing', '1 mm', 'OUT_OF_RANGE'],
      ['radius', '0 m', 'NOT_POSITIVE'],
      ['wholeStations', 'yes', 'WRONG_TYPE'],
    ],
  );
});

describe('rounded corner', () => {
  test('from the tangent; the largest radius that the sides allow', () => {
    const corner = fillet({ turn: '90 deg', tangent: '2 m', sides: ['3 m', '2 m'] });
    expect(corner.radius.toNumber('m')).toBeCloseTo(2, 15);
    expect(corner.maximumRadius?.toNumber('m')).toBeCloseTo(2, 15);
    expect(fillet({ turn: '90 deg', radius: '1 m' }).maximumRadius).toBeNull();
  });

  test('longer than its sides: says by what', () => {
    const issue = expectFault(
      () => fillet({ turn: '72 deg', radius: '3 m', sides: ['5 m', '2.179 m'] }),
      'TANGENTS_OVERLAP',
    );
    expect(issue.path).toEqual(['radius']);
    expect(issue.message).toContain('2.17963 m');
    expect(issue.message).toContain('2.179 m');
    const given = { turn: '90 deg', tangent: '3 m', sides: ['2 m', '5 m'] } as const;
    expect(expectFault(() => fillet(given), 'TANGENTS_OVERLAP').path).toEqual(['tangent']);
  });

  testRefusals(fillet, { turn: '90 deg', radius: '1 m' }, [
    ['tangent', '1 m', 'CONFLICTING_FIELDS', 'radius'],
    ['radius', undefined, 'REQUIRED'],
    ['turn', '179.95 deg', 'OUT_OF_RANGE'],
    ['sides', [], 'EMPTY_LIST'],
    ['sides', ['1 m', '0 m'], 'NOT_POSITIVE', 'sides[1]'],
    ['sides', ['0.5 m'], 'TOO_FEW'],
    ['sides', ['1 m', '1 m', '1 m'], 'TOO_MANY'],
    ['sides', ['3 m', '0.5 m'], 'TANGENTS_OVERLAP', 'radius'],
  ]);
});

describe('stake spacing on a curve', () => {
  test('the string is as far from the curve as allowed', () => {
    // R 5, chord 6: 1 m off in the middle
    const spacing = stakeSpacing({ radius: '5 m', deviation: '1 m', length: '6.5 m' });
    expect(spacing.chord.to('m').toString()).toBe('6');
    expect(spacing.arc.toNumber('m')).toBeCloseTo(10 * Math.asin(0.6), 13);
    expect(spacing.pieces).toBe(2);
    expect(spacing.piece?.to('m').toString()).toBe('3.25');
    expect(spacing.needsTemplate).toBe(false);
  });

  test('a string as far off as the radius spans half the circle', () => {
    expect(stakeSpacing({ radius: '5 m', deviation: '5 m' }).chord.to('m').toString()).toBe('10');
  });

  test('so close that a template serves better', () => {
    const spacing = stakeSpacing({ radius: '6 m', deviation: '3 mm' });
    expect(spacing.needsTemplate).toBe(true);
    expect(spacing.note).toContain('template');
    expect(spacing.pieces).toBeNull();
    expect(spacing.piece).toBeNull();
  });

  testRefusals(stakeSpacing, { radius: '5 m', deviation: '10 mm', length: '6 m' }, [
    ['deviation', '5.001 m', 'OUT_OF_RANGE'],
    ['deviation', '0 mm', 'NOT_POSITIVE'],
    ['length', '10 km', 'OUT_OF_RANGE', 'deviation'],
    ['radius', '-5 m', 'NOT_POSITIVE'],
  ]);
});

test('each of them shows its working', () => {
  const worked = [
    arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m' }),
    chordOffsets({ chord: '4 m', middleOrdinate: '0.5 m', spacing: '1 m' }),
    tangentOffsets({ radius: '4 m', length: '2 m', spacing: '1 m' }),
    deflectionTable({ radius: '10 m', turn: '90 deg', spacing: '5 m' }),
    fillet({ turn: '90 deg', radius: '1 m' }),
    stakeSpacing({ radius: '5 m', deviation: '10 mm' }),
  ];
  expect(worked.map(({ working }) => working.length)).toEqual([3, 5, 3, 5, 5, 1]);
});

test('a missing field is one fault, not two', () => {
  const of = (run: () => unknown) => faultsOf(run).map(({ code }) => code);
  expect(of(() => stakeSpacing({ radius: undefined as never, deviation: '1 mm' }))).toEqual([
    'REQUIRED',
  ]);
  expect(
    of(() => tangentOffsets({ radius: undefined as never, length: '1 m', spacing: '1 m' })),
  ).toEqual(['REQUIRED']);
  expect(
    of(() => chordOffsets({ chord: undefined as never, middleOrdinate: '1 m', spacing: '1 m' })),
  ).toEqual(['REQUIRED']);
  expect(of(() => threeFourFive({ longest: undefined as never, step: '1 ft' }))).toEqual([
    'REQUIRED',
  ]);
});
