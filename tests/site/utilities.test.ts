import { describe, expect, test } from 'vitest';
import { handDig, locateWindow, utilityCover } from 'settline/site';
import { dateOf, readDay, weekdayOf } from '../../src/site/utilities/calendar.js';
import { makeReader } from '../../src/input/reader.js';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const SQUARE = { crossingAngle: '90 deg', digWidth: '10 ft', depth: '1 ft' } as const;

describe('digging by hand across marked lines', () => {
  test('the zone runs from the outside of the line', () => {
    const dig = handDig({ ...SQUARE, lines: [{ id: 'g', width: '4 in', tolerance: '18 in' }] });
    expect(dig.zones[0]?.width.to('in').toString()).toBe('40');
    expect(dig.along.to('ft').toString()).toBe('10');
    expect(dig.time).toBeNull();
  });

  test('zones that overlap or touch are one, others are not', () => {
    const line = (id: string, offset: string) => ({
      id,
      width: '0 in',
      tolerance: '18 in',
      offset,
    });
    const zones = (second: string) =>
      handDig({ ...SQUARE, lines: [line('b', second), line('a', '0 ft')] }).zones.map(
        ({ lines, width }) => `${lines.join('')} ${width.to('ft').toString()}`,
      );
    expect(zones('2 ft')).toEqual(['ab 5']);
    expect(zones('3 ft')).toEqual(['ab 6']);
    expect(zones('3.0001 ft')).toEqual(['a 3', 'b 3']);
    expect(zones('-2 ft')).toEqual(['ba 5']);
  });

  test('a narrow zone inside a wide one adds nothing', () => {
    const dig = handDig({
      ...SQUARE,
      lines: [
        { id: 'duct', width: '4 ft', tolerance: '2 ft', offset: '0 ft' },
        { id: 'lead', width: '0 in', tolerance: '1 ft', offset: '1 ft' },
      ],
    });
    expect(dig.zones).toHaveLength(1);
    expect(dig.volume.to('ft3').toString()).toBe('80');
  });

  test('a slanting crossing is longer; 30 degrees twice as long', () => {
    const lines = [{ id: 'g', width: '0 in', tolerance: '1 ft' }];
    const slanted = handDig({ ...SQUARE, crossingAngle: '30 deg', lines, rate: '10 ft3/h' });
    expect(slanted.along.toNumber('ft')).toBeCloseTo(20, 12);
    expect(slanted.time?.toNumber('h')).toBeCloseTo(4, 12);
    const other = handDig({ ...SQUARE, crossingAngle: '150 deg', lines });
    expect(other.along.toNumber('ft')).toBeCloseTo(20, 12);
  });

  const valid = {
    ...SQUARE,
    lines: [
      { id: 'a', width: '1 in', tolerance: '18 in', offset: '0 ft' },
      { id: 'b', width: '1 in', tolerance: '18 in', offset: '9 ft' },
    ],
    rate: '0.35 m3/h',
  };
  testRefusals(handDig, valid, [
    ['digWidth', 12, 'UNIT_MISSING'],
    ['depth', '0 m', 'NOT_POSITIVE'],
    ['crossingAngle', '4.9 deg', 'OUT_OF_RANGE'],
    ['crossingAngle', '175.1 deg', 'OUT_OF_RANGE'],
    ['crossingAngle', '0 deg', 'NOT_POSITIVE'],
    ['lines', [], 'EMPTY_LIST'],
    ['lines', new Array(51).fill({}), 'TOO_MANY'],
    ['lines.0.id', '', 'EMPTY', 'lines[0].id'],
    ['lines.1.id', 'a', 'DUPLICATE_ID', 'lines[1].id'],
    ['lines.0.width', '-1 in', 'NEGATIVE', 'lines[0].width'],
    ['lines.0.tolerance', undefined, 'REQUIRED', 'lines[0].tolerance'],
    ['lines.0.tolerance', '0 in', 'NOT_POSITIVE', 'lines[0].tolerance'],
    ['lines.1.offset', undefined, 'REQUIRED', 'lines[1].offset'],
    ['lines.1.path', [], 'CONFLICTING_FIELDS', 'lines[1].path'],
    ['crossingAngle', undefined, 'REQUIRED'],
    ['digWidth', undefined, 'REQUIRED'],
    ['rate', '0 m3/h', 'NOT_POSITIVE'],
  ]);
});

describe('digging by hand in a drawn dig', () => {
  const at = (x: number, y: number) =>
    ({ x: { value: x, unit: 'm' }, y: { value: y, unit: 'm' } }) as const;
  const dig = {
    unit: 'm',
    points: [
      [0, 0],
      [20, 0],
      [20, 6],
      [0, 6],
    ],
  } as const;
  const line = (id: string, ...path: ReturnType<typeof at>[]) => ({
    id,
    path,
    width: '0 m',
    tolerance: '0.5 m',
  });

  test('two lines that cross each other are counted once where they cross', () => {
    const { zones, area, share } = handDig({
      outline: dig,
      depth: '0.5 m',
      lines: [line('a', at(5, -9), at(5, 9)), line('b', at(-9, 3), at(30, 3))],
    });
    expect(zones.map((zone) => zone.area.to('m2').toString())).toEqual(['6', '20']);
    expect(zones.map(({ added }) => added.to('m2').toString())).toEqual(['6', '19']);
    expect(area.to('m2').toString()).toBe('25');
    expect(share).toBeCloseTo(25 / 120, 14);
  });

  test('a line that ends in the dig: its zone ends as far past it', () => {
    const { area } = handDig({
      outline: dig,
      depth: '1 m',
      lines: [line('a', at(5, -9), at(5, 2))],
    });
    expect(area.to('m2').toString()).toBe('2.5');
  });

  test('a bend is covered and not counted twice', () => {
    const { area, volume } = handDig({
      outline: dig,
      depth: '0.5 m',
      lines: [line('a', at(5, -9), at(5, 3), at(30, 3))],
    });
    // 1 m wide from y = 0 to 3.5 and from x = 4.5 to 20, less the corner counted twice: 1 m by 1 m
    expect(area.to('m2').toString()).toBe('18');
    expect(volume.to('m3').toString()).toBe('9');
  });

  test('a line beside the dig reaches into it only with its zone, or not at all', () => {
    const beside = (y: number) =>
      handDig({
        outline: dig,
        depth: '1 m',
        lines: [line('a', at(-9, y), at(30, y))],
      }).area.toNumber('m2');
    expect(beside(-0.25)).toBe(5);
    expect(beside(-0.5)).toBe(0);
    expect(beside(-3)).toBe(0);
  });

  test('a concave dig, either way round', () => {
    // a U, its arms 2 m wide on either side of a gap 4 m wide, open above
    const points = [
      [0, 0],
      [8, 0],
      [8, 6],
      [6, 6],
      [6, 2],
      [2, 2],
      [2, 6],
      [0, 6],
    ] as const;
    for (const round of [points, [...points].reverse()]) {
      const { area } = handDig({
        outline: { unit: 'm', points: round },
        depth: '1 m',
        lines: [line('across', at(-5, 4), at(20, 4)), line('up', at(1, -5), at(1, 20))],
      });
      // 1 m across both arms is 4, 6 up the left arm, 1 where they cross
      expect(area.to('m2').toString()).toBe('9');
    }
  });

  test('agrees with the straight crossing at a slant', () => {
    const angle = Math.PI / 3;
    const strip = {
      unit: 'm',
      points: [
        [-50, 0],
        [50, 0],
        [50, 5.7],
        [-50, 5.7],
      ],
    } as const;
    const drawn = handDig({
      outline: strip,
      depth: '0.4 m',
      lines: [
        {
          id: 'a',
          path: [
            at(-20 * Math.cos(angle), -20 * Math.sin(angle)),
            at(20 * Math.cos(angle), 20 * Math.sin(angle)),
          ],
          width: '0.1 m',
          tolerance: '18 in',
        },
      ],
      rate: '0.35 m3/h',
    });
    const crossing = handDig({
      digWidth: '5.7 m',
      depth: '0.4 m',
      crossingAngle: '60 deg',
      lines: [{ id: 'a', width: '0.1 m', tolerance: '18 in' }],
      rate: '0.35 m3/h',
    });
    expect(drawn.volume.toNumber('m3')).toBeCloseTo(crossing.volume.toNumber('m3'), 10);
    expect(drawn.time?.toNumber('h')).toBeCloseTo(crossing.time?.toNumber('h') ?? 0, 9);
  });

  test('a hole in the dig is not dug, whichever way round it is drawn', () => {
    const square = [
      [4, 2],
      [8, 2],
      [8, 4],
      [4, 4],
    ] as const;
    for (const hole of [square, [...square].reverse()]) {
      const { area, digArea, zones } = handDig({
        outline: { ...dig, holes: [hole] },
        depth: '1 m',
        lines: [line('up', at(5, -9), at(5, 9)), line('across', at(-9, 3), at(30, 3))],
      });
      expect(digArea.to('m2').toString()).toBe('112');
      // 6 m up less 2 m in the hole; 20 m across less 4 m in it, and they meet in the hole
      expect(zones.map((zone) => zone.area.to('m2').toString())).toEqual(['4', '16']);
      expect(area.to('m2').toString()).toBe('20');
    }
  });

  test('a dig with arcs: the zone reaches to the arc', () => {
    const round = {
      unit: 'm',
      points: [
        [-5, 0],
        [5, 0],
      ],
    } as const;
    const arcs = [0, 1].map((edge) => ({ edge, bulgeMiddleOrdinate: 5 }));
    const { area, digArea } = handDig({
      outline: { ...round, arcs },
      depth: '1 m',
      lines: [{ ...line('across', at(-9, 0), at(9, 0)), tolerance: '3 m' }],
    });
    const exact = 2 * (3 * 4 + 25 * Math.asin(3 / 5));
    expect(digArea.toNumber('m2')).toBeCloseTo(25 * Math.PI, 12);
    expect(Math.abs(area.toNumber('m2') / exact - 1)).toBeLessThan(5e-6);
    expect(area.toNumber('m2')).toBeLessThan(exact);
  });

  test('a round hole: its arcs bulge into the paving', () => {
    const hole = {
      points: [
        [8, 3],
        [12, 3],
      ],
      arcs: [0, 1].map((edge) => ({ edge, bulgeMiddleOrdinate: -2 })),
    } as const;
    const { area, digArea } = handDig({
      outline: { ...dig, holes: [hole] },
      depth: '1 m',
      lines: [line('up', at(10, -9), at(10, 9))],
    });
    expect(digArea.toNumber('m2')).toBeCloseTo(120 - 4 * Math.PI, 12);
    const inHole = 2 * (0.5 * Math.sqrt(4 - 0.25) + 4 * Math.asin(0.25));
    expect(area.toNumber('m2')).toBeCloseTo(6 - inHole, 4);
  });

  test('an arc that bulges inward takes from the dig', () => {
    const { area } = handDig({
      outline: { ...dig, arcs: [{ edge: 0, bulgeMiddleOrdinate: -5 }] },
      depth: '1 m',
      lines: [line('up', at(10, -9), at(10, 9))],
    });
    // the arc over 20 m rises 5 m, on a radius of 12.5 m, 0.01 m less at the sides of the zone
    const under = 12.5 ** 2 * Math.asin(0.04) + 0.5 * Math.sqrt(12.5 ** 2 - 0.25) - 7.5;
    expect(area.toNumber('m2')).toBeCloseTo(6 - under, 4);
  });

  test('grid coordinates far from their origin', () => {
    const [x, y] = [612_345.678, 5_234_567.891];
    const { area } = handDig({
      outline: {
        unit: 'm',
        points: [
          [x, y],
          [x + 20, y],
          [x + 20, y + 6],
          [x, y + 6],
        ],
      },
      depth: '1 m',
      lines: [line('a', at(x + 5, y - 9), at(x + 5, y + 9))],
    });
    expect(area.to('m2').toString()).toBe('6');
  });

  test('a point twice is told without a number', () => {
    const twice = { outline: dig, depth: '1 m', lines: [line('a', at(0, 0), at(0, 0))] };
    expect(expectFault(() => handDig(twice), 'POINTS_COINCIDE').message).toBe(
      'is the same point as the one before it. Remove one of them',
    );
  });

  testRefusals(
    handDig,
    { outline: dig, depth: '1 m', lines: [line('a', at(0, 0), at(1, 1))], rate: '1 m3/h' },
    [
      ['outline', undefined, 'REQUIRED', 'digWidth'],
      ['digWidth', '1 m', 'CONFLICTING_FIELDS'],
      ['crossingAngle', '60 deg', 'CONFLICTING_FIELDS'],
      ['lines.0.offset', '1 m', 'CONFLICTING_FIELDS', 'lines[0].offset'],
      ['lines.0.path', undefined, 'REQUIRED', 'lines[0].path'],
      [
        'outline',
        {
          unit: 'm',
          points: [
            [0, 0],
            [1, 1],
            [1, 0],
            [0, 1],
          ],
        },
        'SELF_INTERSECTION',
        'outline.points',
      ],
      ['depth', '-1 m', 'NOT_POSITIVE'],
      ['lines', [], 'EMPTY_LIST'],
      ['lines', Array.from({ length: 21 }, (_, k) => line(`${k}`, at(0, 0), at(1, 1))), 'TOO_MANY'],
      ['lines.0.path', [], 'EMPTY_LIST', 'lines[0].path'],
      ['lines.0.path', [at(0, 0)], 'TOO_FEW', 'lines[0].path'],
      ['lines.0.path', [at(0, 0), at(0, 0)], 'POINTS_COINCIDE', 'lines[0].path[1]'],
      ['lines.0.path', new Array(51).fill(at(0, 0)), 'TOO_MANY', 'lines[0].path'],
      ['lines.0.path', [at(0, 0), at(0, 10_001)], 'OUT_OF_RANGE', 'lines[0].path[1]'],
      ['lines.0.path', [at(0, 0), at(-10_001, 0)], 'OUT_OF_RANGE', 'lines[0].path[1]'],
      ['lines.0.path', [at(0, 0), { x: '1 m' }], 'REQUIRED', 'lines[0].path[1].y'],
      [
        'outline',
        { ...dig, arcs: [{ edge: 9, bulgeMiddleOrdinate: 1 }] },
        'OUT_OF_RANGE',
        'outline.arcs[0].edge',
      ],
      [
        'outline',
        {
          ...dig,
          holes: [
            [
              [30, 0],
              [31, 0],
              [31, 1],
            ],
          ],
        },
        'HOLE_OUTSIDE',
        'outline.holes[0]',
      ],
      [
        'outline',
        {
          unit: 'm',
          points: [
            [0, 0],
            [0, 0],
            [1, 0],
          ],
          arcs: [{ edge: 0, bulgeMiddleOrdinate: 1 }],
        },
        'POINTS_COINCIDE',
        'outline.points',
      ],
      ['lines.0.tolerance', undefined, 'REQUIRED', 'lines[0].tolerance'],
      ['rate', '1 m3', 'UNIT_UNKNOWN'],
    ],
  );
});

describe('cover over a found line', () => {
  const cover = (found: string, more: Readonly<Record<string, string>> = {}) =>
    utilityCover({ found, dig: '400 mm', minimumCover: '150 mm', ...more });

  test.each([
    ['300 mm', 'fail', 'line-in-dig', /^Stop\./],
    ['400 mm', 'fail', 'line-in-dig', /reaches 0 mm into the dig/],
    ['400.001 mm', 'fail', 'less-than-minimum', /Stop above it and call the utility owner/],
    ['549.999 mm', 'fail', 'less-than-minimum', /its owner requires 150 mm/],
    ['550 mm', 'pass', 'minimum-kept', /hand tools in the zone/],
    ['700 mm', 'pass', 'minimum-kept', /^300 mm of cover is left over/],
  ] as const)('%s: %s, %s', (found, verdict, code, note) => {
    const result = cover(found);
    expect([result.verdict, result.code]).toEqual([verdict, code]);
    expect(result.note.metric).toMatch(note);
  });

  test('a depth that is not sure enough is not judged', () => {
    expect(cover('560 mm', { uncertainty: '20 mm' }).code).toBe('unclear');
    expect(cover('570 mm', { uncertainty: '20 mm' }).code).toBe('minimum-kept');
    expect(cover('530 mm', { uncertainty: '20 mm' }).verdict).toBe('unclear');
    expect(cover('529 mm', { uncertainty: '20 mm' }).code).toBe('less-than-minimum');
    expect(cover('560 mm', { uncertainty: '20 mm' }).note.us).toContain('6 5/16 in');
  });

  testRefusals(utilityCover, { found: '1 m', dig: '0.5 m', minimumCover: '0 m' }, [
    ['found', undefined, 'REQUIRED'],
    ['found', '-1 m', 'NEGATIVE'],
    ['dig', '0 m', 'NOT_POSITIVE'],
    ['minimumCover', undefined, 'REQUIRED'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('the calendar', () => {
  const day = (text: string) => {
    const reader = makeReader();
    const number = readDay(reader, text, []);
    reader.finish();
    return number;
  };

  test('runs day by day through four hundred years, leap years and weekdays', () => {
    const first = day('1900-01-01');
    expect(weekdayOf(first)).toBe('Monday');
    let [year, month, inMonth] = [1900, 1, 1];
    const days = (y: number, m: number) => {
      if (m === 2) return (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0 ? 29 : 28;
      return [4, 6, 9, 11].includes(m) ? 30 : 31;
    };
    for (let number = first; year < 2301; number += 1) {
      const text = `${year}-${`${month}`.padStart(2, '0')}-${`${inMonth}`.padStart(2, '0')}`;
      if (dateOf(number) !== text || day(text) !== number) expect.fail(text);
      inMonth += 1;
      if (inMonth > days(year, month)) [inMonth, month] = [1, month + 1];
      if (month > 12) [month, year] = [1, year + 1];
    }
  });

  test('agrees with the clock of the engine', () => {
    const names = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
    for (const text of ['1900-03-01', '2000-02-29', '2024-12-31', '2030-05-22', '2999-12-31']) {
      expect(weekdayOf(day(text))).toBe(names[new Date(`${text}T00:00:00Z`).getUTCDay()]);
    }
  });
});

describe('locate window', () => {
  const rule = {
    workingDays: 2,
    requestDayCounts: false,
    start: 'working-day-after',
    weekend: ['Saturday', 'Sunday'],
    holidays: ['2030-05-24'],
    validity: { days: 10, count: 'calendar', from: 'request' },
  } as const;
  const window = (more: object, request = '2030-05-22') =>
    locateWindow({ request, rule: { ...rule, ...more } });

  test('each way of counting', () => {
    expect(window({}).earliest).toBe('2030-05-28');
    expect(window({}).earliestWeekday).toBe('Tuesday');
    expect(window({ requestDayCounts: true }).notice).toEqual(['2030-05-22', '2030-05-23']);
    // the day after falls on a holiday and a weekend
    expect(window({ requestDayCounts: true }).earliest).toBe('2030-05-27');
    expect(window({ start: 'last-day-of-notice' }).earliest).toBe('2030-05-27');
    expect(window({ holidays: [] }).earliest).toBe('2030-05-27');
    expect(window({ weekend: [] }).notice).toEqual(['2030-05-23', '2030-05-25']);
    // a request on a Saturday does not count, even where the day of the request does
    expect(window({ requestDayCounts: true }, '2030-05-25').notice).toEqual([
      '2030-05-27',
      '2030-05-28',
    ]);
  });

  test('how long the marks hold', () => {
    expect(window({}).expires).toBe('2030-06-01');
    const validity = { days: 10, count: 'calendar', from: 'start' } as const;
    expect(window({ validity }).expires).toBe('2030-06-07');
    expect(window({ validity: { ...validity, count: 'working' } }).expires).toBe('2030-06-11');
  });

  test('over the turn of a year and a leap day', () => {
    expect(window({ holidays: ['2027-12-31'] }, '2027-12-30').earliest).toBe('2028-01-05');
    expect(window({}, '2028-02-28').notice).toEqual(['2028-02-29', '2028-03-01']);
  });

  test('a day against the window', () => {
    const on = (today: string) => locateWindow({ request: '2030-05-22', rule, today });
    expect([on('2030-05-27').status, on('2030-05-27').daysLeft]).toEqual(['wait', 6]);
    expect([on('2030-05-28').status, on('2030-06-01').status]).toEqual(['open', 'open']);
    expect(on('2030-06-01').daysLeft).toBe(1);
    expect([on('2030-06-02').status, on('2030-06-02').daysLeft]).toEqual(['expired', 0]);
    expect(on('2030-06-02').note).toMatch(/Do not dig. Renew/);
    expect(on('2030-05-27').note).toMatch(/Do not dig before 2030-05-28/);
    expect(on('2030-05-28').note).toMatch(/only if every owner has answered/);
    expect(window({}).status).toBeNull();
  });

  test('marks that expire before digging may start are refused', () => {
    const until = (days: number) => ({ validity: { days, count: 'calendar', from: 'request' } });
    // digging may start on 28 May, six days after the request
    expect(window(until(6)).expires).toBe('2030-05-28');
    const { path, message } = expectFault(() => window(until(5)), 'LIMITS_CONTRADICT');
    expect(path).toEqual(['rule', 'validity']);
    expect(message).toContain(
      'the marks expire on 2030-05-27, before digging may start on 2030-05-28. Check validity',
    );
  });

  testRefusals(locateWindow, { request: '2030-05-22', rule, today: '2030-05-23' }, [
    ['request', '2030-02-29', 'TEXT_UNREADABLE'],
    ['request', '22.5.2030', 'TEXT_UNREADABLE'],
    ['request', '2030-13-01', 'TEXT_UNREADABLE'],
    ['request', '2030-00-10', 'TEXT_UNREADABLE'],
    ['request', '1899-12-31', 'TEXT_UNREADABLE'],
    ['request', 20300522, 'TEXT_UNREADABLE'],
    ['request', undefined, 'REQUIRED'],
    ['today', '2030-04-31', 'TEXT_UNREADABLE'],
    ['rule', undefined, 'REQUIRED'],
    ['rule.workingDays', undefined, 'REQUIRED'],
    ['rule.workingDays', 0, 'NOT_POSITIVE'],
    ['rule.workingDays', 1.5, 'NOT_WHOLE'],
    ['rule.requestDayCounts', undefined, 'REQUIRED'],
    ['rule.start', undefined, 'REQUIRED'],
    ['rule.weekend', undefined, 'REQUIRED'],
    ['rule.weekend', ['Caturday'], 'UNKNOWN_CHOICE', 'rule.weekend[0]'],
    [
      'rule.weekend',
      ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
      'OUT_OF_RANGE',
    ],
    ['rule.holidays', undefined, 'REQUIRED'],
    ['rule.holidays', ['2030-1-1'], 'TEXT_UNREADABLE', 'rule.holidays[0]'],
    ['rule.validity', undefined, 'REQUIRED'],
    ['rule.validity.days', 500, 'OUT_OF_RANGE'],
    ['rule.validity.count', 'days', 'UNKNOWN_CHOICE'],
    ['rule.validity.from', undefined, 'REQUIRED'],
  ]);
});
