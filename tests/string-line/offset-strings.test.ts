import { describe, expect, test } from 'vitest';
import { gradeLine } from 'settline/grading';
import { depthBetweenStrings, stringAtStake, stringsAlongEdge } from 'settline/string-line';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const offsetString = {
  stringHeight: '150 mm',
  offset: '500 mm',
  crossSlope: '-2%',
  carriesCrossSlope: true,
} as const;
const metres = (of: { to(unit: 'm'): { toString(): string } } | null | undefined) =>
  of?.to('m').toString();

describe('a string on a stake offset from the edge', () => {
  const stake = { ...offsetString, finishedGrade: '10 m' } as const;

  test('it must be said whether the string carries the cross slope out', () => {
    const carried = stringAtStake(stake);
    expect(metres(carried.elevation)).toBe('10.14');
    expect(metres(carried.aboveEdge)).toBe('0.14');
    expect(metres(carried.crossRise)).toBe('-0.01');
    const edge = stringAtStake({ ...stake, carriesCrossSlope: false });
    expect(metres(edge.elevation)).toBe('10.15');
    expect(metres(edge.crossRise)).toBe('-0.01');
    expect(formulaOf(carried.working[0])).not.toBe(formulaOf(edge.working[0]));
    expect(carried.aboveGround).toBeNull();
    expect(carried.raiseStringBy).toBeNull();
    expect(carried.stakeLength).toBeNull();
  });

  test('over the ground, with the length of the stake', () => {
    const tie = stringAtStake({
      ...stake,
      ground: '9.94 m',
      inGround: '400 mm',
      aboveString: '50 mm',
    });
    expect(metres(tie.aboveGround)).toBe('0.2');
    expect(tie.raiseStringBy?.isZero()).toBe(true);
    expect(metres(tie.stakeLength)).toBe('0.65');
    expect(
      metres(stringAtStake({ ...stake, ground: '9.94 m', inGround: '400 mm' }).stakeLength),
    ).toBe('0.6');
  });

  test('too low over the ground: raise the whole line', () => {
    const low = stringAtStake({ ...stake, ground: '10.2 m' });
    expect(metres(low.aboveGround)).toBe('-0.06');
    expect(metres(low.raiseStringBy)).toBe('0.06');
    expect(low.note).toContain('whole line');
    // Moving the Earth: The Workbook of Excavation, p. 8.10: at least 5 in above ground
    const near = stringAtStake({ ...stake, ground: '10.04 m', clearance: '5 in' });
    expect(metres(near.raiseStringBy)).toBe('0.027');
    const clear = stringAtStake({
      ...stake,
      ground: length('10.14 m').minus(length('5 in')),
      clearance: '5 in',
    });
    expect(clear.raiseStringBy?.isZero()).toBe(true);
    expect(clear.note).not.toContain('whole line');
  });

  testRefusals(stringAtStake, { ...stake, ground: '9.9 m', inGround: '0.3 m' }, [
    ['carriesCrossSlope', undefined, 'REQUIRED'],
    ['carriesCrossSlope', 'yes', 'WRONG_TYPE'],
    ['offset', '-1 mm', 'NEGATIVE'],
    ['stringHeight', '-1 mm', 'NEGATIVE'],
    ['stringHeight', '6 m', 'OUT_OF_RANGE'],
    ['crossSlope', '2', 'UNIT_MISSING'],
    ['crossSlope', '150%', 'OUT_OF_RANGE'],
    ['finishedGrade', 10, 'UNIT_MISSING'],
    ['ground', undefined, 'REQUIRED'],
    ['clearance', '-1 in', 'NEGATIVE'],
    ['aboveString', '-1 in', 'NEGATIVE'],
  ]);
});

describe('strings along a sloped edge', () => {
  const grade = gradeLine({
    points: [
      { station: '0 m', elevation: '10 m' },
      { station: '10 m', elevation: '9.8 m' },
      { station: '20 m', elevation: '9.9 m' },
    ],
  });
  const edge = {
    ...offsetString,
    grade,
    stakes: [
      { id: 'A', station: '0 m', ground: '9.9 m' },
      { id: 'B', station: '6 m', ground: '9.98 m' },
      { id: 'C', station: '20 m' },
    ],
  };

  test('elevations and spans', () => {
    const { stakes, spans } = stringsAlongEdge(edge);
    expect(stakes.map(({ finishedGrade }) => metres(finishedGrade))).toEqual(['10', '9.88', '9.9']);
    expect(stakes.map(({ elevation }) => metres(elevation))).toEqual(['10.14', '10.02', '10.04']);
    expect(stakes.map(({ aboveGround }) => metres(aboveGround))).toEqual([
      '0.24',
      '0.04',
      undefined,
    ]);
    expect(spans.map(({ from, to, length: long }) => `${from}-${to} ${metres(long)}`)).toEqual([
      'A-B 6',
      'B-C 14',
    ]);
    expect(spans[0]?.slope.to('percent').toString()).toBe('-2');
    expect(metres(spans[1]?.rise)).toBe('0.02');
    expect(spans[0]?.sag).toBeNull();
  });

  test('a break without a stake: how far the string is off there', () => {
    const found = stringsAlongEdge(edge);
    // at 10 m the string is 10.02 + 0.02 x 4 / 14, and should be 9.94
    expect(found.breaksWithoutStake).toHaveLength(1);
    expect(found.breaksWithoutStake[0]?.stringError.times(14).to('m').toString()).toBe('1.2');
    expect(found.notes[0]).toContain('grade break');
    const staked = stringsAlongEdge({
      ...edge,
      stakes: [
        ...edge.stakes.slice(0, 2),
        { id: 'M', station: '10 m' },
        { id: 'C', station: '20 m' },
      ],
    });
    expect(staked.breaksWithoutStake).toEqual([]);
    expect(staked.notes).toEqual([]);
    // a break beyond the stakes is none of the string's
    const short = stringsAlongEdge({ ...edge, stakes: edge.stakes.slice(0, 2) });
    expect(short.breaksWithoutStake).toEqual([]);
  });

  test('raised over the ground by the most that any stake needs', () => {
    const found = stringsAlongEdge({ ...edge, clearance: '100 mm' });
    expect(metres(found.raiseStringBy)).toBe('0.06');
    expect(found.notes.some((note) => note.includes('whole line'))).toBe(true);
    expect(stringsAlongEdge(edge).raiseStringBy.isZero()).toBe(true);
  });

  test('beyond the ends of the grade line it answers, and flags it', () => {
    const found = stringsAlongEdge({
      ...edge,
      stakes: [
        { id: 'A', station: '10 m' },
        { id: 'Z', station: '30 m' },
      ],
    });
    expect(found.stakes.map(({ extrapolated }) => extrapolated)).toEqual([false, true]);
    expect(metres(found.stakes[1]?.finishedGrade)).toBe('10');
    expect(found.notes.some((note) => note.includes('past the ends'))).toBe(true);
  });

  test('sag of each span', () => {
    const { spans } = stringsAlongEdge({
      ...edge,
      string: { tension: '50 N', weightPerLength: '0.02 N/m' },
    });
    // 0.02 x 36 / 400, over the cosine of 2 %
    expect(spans[0]?.sag?.toNumber('mm')).toBeCloseTo(1.8 * Math.hypot(1, 0.02), 12);
  });

  testRefusals(
    stringsAlongEdge,
    { ...edge, string: { tension: '50 N', weightPerLength: '0.02 N/m' } },
    [
      ['grade', undefined, 'REQUIRED'],
      ['stakes', edge.stakes.slice(0, 1), 'TOO_FEW'],
      ['stakes.1.station', '0 m', 'NOT_INCREASING'],
      ['stakes.2.id', 'A', 'DUPLICATE_ID'],
      ['stakes.0.ground', 9, 'UNIT_MISSING'],
      ['carriesCrossSlope', undefined, 'REQUIRED'],
      ['string.tension', '0 N', 'NOT_POSITIVE'],
      ['string.tension', '0.05 N', 'OUT_OF_RANGE'],
      ['string', 'tight', 'WRONG_TYPE'],
    ],
  );
});

describe('depth between two edge strings', () => {
  const across = {
    left: '10.2 m',
    right: '10.1 m',
    width: '5 m',
    fromLeft: '1 m',
    surface: 'base top',
    below: '250 mm',
  } as const;

  test('what to measure down, with and without the sag of the line', () => {
    const board = depthBetweenStrings(across);
    expect(metres(board.straight)).toBe('10.18');
    expect(metres(board.target)).toBe('9.93');
    expect(metres(board.measureDown)).toBe('0.25');
    expect(board.cut).toBeNull();
    expect(board.action).toBeNull();
    expect(board.elevation).toBeNull();
    expect(board.verdict).toBeNull();
    const line = depthBetweenStrings({ ...across, sag: '2 mm' });
    expect(metres(line.line)).toBe('10.178');
    expect(metres(line.measureDown)).toBe('0.248');
    expect(line.target.equals(board.target)).toBe(true);
  });

  test.each([
    ['240 mm', '10', 'cut', '9.94'],
    ['250 mm', '0', 'none', '9.93'],
    ['255 mm', '-5', 'fill', '9.925'],
  ] as const)('measured %s', (measured, cut, action, elevation) => {
    const spot = depthBetweenStrings({ ...across, measured, tolerance: '5 mm' });
    expect(spot.cut?.to('mm').toString()).toBe(cut);
    expect(spot.action).toBe(action);
    expect(metres(spot.elevation)).toBe(elevation);
    expect(spot.verdict).toBe(action === 'cut' ? 'fail' : 'pass');
  });

  test('with an uncertain measure the verdict may be unclear', () => {
    const spot = { ...across, measured: '244 mm', tolerance: '5 mm' } as const;
    expect(depthBetweenStrings({ ...spot, uncertainty: '2 mm' }).verdict).toBe('unclear');
    expect(depthBetweenStrings({ ...spot, uncertainty: '0.5 mm' }).verdict).toBe('fail');
  });

  test('outside the strings it answers, and flags it', () => {
    expect(depthBetweenStrings({ ...across, fromLeft: '5 m' }).extrapolated).toBe(false);
    const right = depthBetweenStrings({ ...across, fromLeft: '6 m' });
    expect(right.extrapolated).toBe(true);
    expect(metres(right.straight)).toBe('10.08');
    expect(depthBetweenStrings({ ...across, fromLeft: '-1 mm' }).extrapolated).toBe(true);
  });

  test('the working ends with what is left, if it was measured', () => {
    expect(depthBetweenStrings(across).working).toHaveLength(2);
    const { working } = depthBetweenStrings({ ...across, measured: '240 mm' });
    expect(working[2]?.result.value).toEqual(length('10 mm'));
  });

  testRefusals(
    depthBetweenStrings,
    { ...across, sag: '1 mm', measured: '240 mm', tolerance: '5 mm', uncertainty: '1 mm' },
    [
      ['tolerance', undefined, 'REQUIRED'],
      ['width', '0 m', 'NOT_POSITIVE'],
      ['left', undefined, 'REQUIRED'],
      ['surface', '', 'EMPTY'],
      ['below', 250, 'UNIT_MISSING'],
      ['sag', '-1 mm', 'NEGATIVE'],
      ['tolerance', '-1 mm', 'NEGATIVE'],
      ['measured', '21 m', 'OUT_OF_RANGE'],
    ],
  );
});

test('a grade line that is none', () => {
  const issue = expectFault(
    () =>
      stringsAlongEdge({
        ...offsetString,
        grade: { points: [] } as never,
        stakes: [
          { id: 'A', station: '0 m' },
          { id: 'B', station: '1 m' },
        ],
      }),
    'WRONG_TYPE',
  );
  expect(issue.message).toContain('gradeLine');
});
