import { describe, expect, test } from 'vitest';
import { gradeLine } from 'settline/grading';
import {
  depthBetweenStrings,
  stringAtStake,
  stringSag,
  stringsAlongEdge,
} from 'settline/string-line';
import { length } from 'settline/units';
import { expectMisprint, expectPrinted } from '../printed.js';

describe('sag', () => {
  test('of a tight wire', () => {
    // Tight-wire sag formula and example, sag chart note. Read: 0.0007 lb/ft at 30 lb, 0.0003 ft in
    // 10 ft and 0.03 ft in 100 ft.
    const wire = { tension: '30 lbf', weightPerLength: '0.0007 lb/ft' } as const;
    expectPrinted(stringSag({ ...wire, span: '10 ft' }).midspan.toNumber('ft'), '0.0003');
    const long = stringSag({ ...wire, span: '100 ft', from: '25 ft' });
    expectPrinted(long.midspan.toNumber('ft'), '0.03');
    expectPrinted(long.midspan.toNumber('ft'), '0.0291667'); // derived
    expectPrinted(long.catenary.toNumber('ft'), '0.0291667'); // derived
    // the quarter point is printed as 3/4 of the rounded 0.03
    expectMisprint(long.at?.sag.toNumber('ft') ?? Number.NaN, '0.0225', '0.021875');
  });

  test('of a line of 500 m', () => {
    // Line sag example (parabola), worked sentence. Read: 1 kg/m at 10 000 kgf, 3.125 m.
    const { midspan } = stringSag({
      span: '500 m',
      tension: '10000 kgf',
      weightPerLength: '1 kg/m',
    });
    expect(midspan.to('m').toString()).toBe('3.125');
  });

  test('of a mason line (formula map, invented example, computed by an independent script)', () => {
    const line = { tension: '60 N', weightPerLength: '1.2 g/m' } as const;
    const sag = stringSag({ ...line, span: '15 m', from: '3.75 m', tolerance: '2 mm' });
    expectPrinted(sag.midspan.toNumber('mm'), '5.516');
    expectPrinted(sag.catenary.toNumber('mm'), '5.516');
    expectPrinted(sag.at?.sag.toNumber('mm') ?? Number.NaN, '4.137');
    expectPrinted(sag.tensionNeeded?.toNumber('N') ?? Number.NaN, '165.5');
    expectPrinted(sag.greatestSpan?.toNumber('m') ?? Number.NaN, '9.03');
    expectPrinted(sag.withMidStake.toNumber('mm'), '1.379');
  });
});

const plain = { offset: '0 m', crossSlope: '0%', carriesCrossSlope: false } as const;

describe('lines at a height above a grade', () => {
  test('cuts from hubs to a sewer', () => {
    // Engineering Aid, Advanced (NAVEDTRA 14070), sewer stakeout, text of Figure 10-19. Read. The
    // grade of 2.18 % falls the way the stations run down; hubs 8 ft off the line.
    const sewer = gradeLine({
      points: [
        {
          station: '850 ft',
          elevation: length('122.87 ft').minus(length('50 ft').times('0.0218')),
        },
        { station: '900 ft', elevation: '122.87 ft' },
      ],
    });
    const { stakes } = stringsAlongEdge({
      ...plain,
      grade: sewer,
      stringHeight: '0 ft',
      offset: '8 ft',
      stakes: [
        { id: '8+50', station: '850 ft', ground: '127.33 ft' },
        { id: '9+00', station: '900 ft', ground: '126.94 ft' },
      ],
    });
    expectPrinted(stakes[0]?.elevation.toNumber('ft') ?? Number.NaN, '121.78');
    expect(stakes.map(({ aboveGround }) => aboveGround?.negated().to('ft').toString())).toEqual([
      '5.55',
      '4.07',
    ]);
  });

  test('sight rails on a grade of 1 %', () => {
    // Sight rails on a 1% sewer, question 8(a). Inputs read, answers derived. The invert is printed
    // as 1066.48, which would take a rod of 23.5 m; with 1086.48 it is 3.50 m. The heights of the
    // rails are the same either way.
    const sewer = gradeLine({
      points: [
        { station: '0 m', elevation: '1086.48 m' },
        { station: '225 m', grade: '1%' },
      ],
    });
    const pegs = [
      ['D', '0 m', '1088.46 m', '1.52'],
      ['C', '75 m', '1088.92 m', '1.81'],
      ['B', '150 m', '1089.85 m', '1.63'],
      ['A', '225 m', '1090.03 m', '2.20'],
    ] as const;
    const { stakes } = stringsAlongEdge({
      ...plain,
      grade: sewer,
      stringHeight: '3.5 m',
      stakes: pegs.map(([id, station, ground]) => ({ id, station, ground })),
    });
    pegs.forEach(([, , , printed], k) => {
      expectPrinted(stakes[k]?.aboveGround?.toNumber('m') ?? Number.NaN, printed);
    });
  });

  test('batter boards 6 ft above a pipe', () => {
    // Elementary surveying textbook, problems 23.11 and 23.12. Inputs read, answers derived.
    const pipe = gradeLine({
      points: [
        { station: '0 ft', elevation: '843.95 ft' },
        { station: '637 ft', elevation: '847.22 ft' },
      ],
    });
    const instrument = length('858.95 ft'); // 853.63 + 5.32
    const rows = [
      ['0', '5.36', '843.950', '9.640', '9.000'],
      ['100', '5.86', '844.463', '8.627', '8.487'],
      ['200', '5.88', '844.977', '8.093', '7.973'],
      ['300', '6.47', '845.490', '6.990', '7.460'],
      ['400', '7.53', '846.003', '5.417', '6.947'],
      ['500', '8.42', '846.517', '4.013', '6.433'],
      ['600', '8.89', '847.030', '3.030', '5.920'],
      ['637', '9.12', '847.220', '2.610', '5.730'],
    ] as const;
    const boards = stringsAlongEdge({
      ...plain,
      grade: pipe,
      stringHeight: '6 ft',
      stakes: rows.map(([station, sight]) => ({
        id: station,
        station: `${station} ft`,
        ground: instrument.minus(length(`${sight} ft`)),
      })),
    });
    expectPrinted(boards.spans[0]?.slope.toNumber('percent') ?? Number.NaN, '0.51334');
    rows.forEach(([, , invert, cut, rod], k) => {
      const stake = boards.stakes[k];
      expectPrinted(stake?.finish.toNumber('ft') ?? Number.NaN, invert);
      // the cut is what the board is above the invert less what it is above the ground
      const board = stake?.aboveGround ?? length('0 ft');
      expectPrinted(length('6 ft').minus(board).toNumber('ft'), cut);
      expectPrinted(instrument.minus(stake?.elevation ?? instrument).toNumber('ft'), rod);
    });
  });

  test('inverts on a grade of -1 %', () => {
    // Sewer invert list on -1%, problem text. Inputs read, answers derived.
    const sewer = gradeLine({
      points: [
        { station: '1000 ft', elevation: '326.32 ft' },
        { station: '1320 ft', grade: '-1%' },
      ],
    });
    const stations = [1000, 1050, 1100, 1150, 1200, 1250, 1300, 1320];
    const printed = [
      '326.32',
      '325.82',
      '325.32',
      '324.82',
      '324.32',
      '323.82',
      '323.32',
      '323.12',
    ];
    const { stakes } = stringsAlongEdge({
      ...plain,
      grade: sewer,
      stringHeight: '0 ft',
      stakes: stations.map((station) => ({ id: `${station}`, station: `${station} ft` })),
    });
    expect(stakes.map(({ elevation }) => elevation.to('ft').toFixed(2))).toEqual(printed);
  });

  test('elevations of a sloped string', () => {
    // Closed form, derived from the constant-height rule: the string falls 2 % from 100.35 to 100.17
    // over 9 m, 0.1 m above finish, subgrade 0.29 m below finish
    const edge = gradeLine({
      points: [
        { station: '0 m', elevation: '100.25 m' },
        { station: '9 m', elevation: '100.07 m' },
      ],
    });
    const { stakes, spans } = stringsAlongEdge({
      ...plain,
      grade: edge,
      stringHeight: '0.1 m',
      stakes: ['0 m', '3 m', '4.5 m', '9 m'].map((station, k) => ({ id: `S${k}`, station })),
    });
    const texts = (of: readonly { to(unit: 'm'): { toString(): string } }[]) =>
      of.map((one) => one.to('m').toString());
    expect(texts(stakes.map(({ elevation }) => elevation))).toEqual([
      '100.35',
      '100.29',
      '100.26',
      '100.17',
    ]);
    expect(texts(stakes.map(({ finish }) => finish))).toEqual([
      '100.25',
      '100.19',
      '100.16',
      '100.07',
    ]);
    const subgrade = stakes.map(({ elevation }) => elevation.minus(length('390 mm')));
    expect(texts(subgrade)).toEqual(['99.96', '99.9', '99.87', '99.78']);
    expect(spans.map(({ slope }) => slope.to('percent').toString())).toEqual(['-2', '-2', '-2']);
  });
});

describe('formula map: invented examples, computed by an independent script', () => {
  test('a string on a stake that is set off', () => {
    const stake = {
      finish: '29.88 m',
      stringHeight: '0.15 m',
      offset: '0.45 m',
      crossSlope: '-2%',
      ground: '29.84 m',
      inGround: '0.35 m',
      aboveString: '0.15 m',
    } as const;
    const carried = stringAtStake({ ...stake, carriesCrossSlope: true });
    expect(carried.elevation.to('m').toString()).toBe('30.021');
    expect(carried.aboveGround?.to('m').toString()).toBe('0.181');
    expect(carried.stakeLength?.to('m').toString()).toBe('0.681');
    const edge = stringAtStake({ ...stake, carriesCrossSlope: false });
    expect(edge.elevation.to('m').toString()).toBe('30.03');
  });

  test('a line across two strings', () => {
    const spot = depthBetweenStrings({
      left: '30.15 m',
      right: '30.046 m',
      width: '1 m',
      fromLeft: '0.4 m',
      surface: 'subgrade',
      below: '0.435 m',
      sag: '1.5 mm',
      measured: '0.44 m',
    });
    expectPrinted(spot.line.toNumber('m'), '30.1069');
    expectPrinted(spot.elevation?.toNumber('m') ?? Number.NaN, '29.6669');
    expectPrinted(spot.target.toNumber('m'), '29.6734');
    expect(spot.cut?.to('mm').toString()).toBe('-6.5');
    expect(spot.action).toBe('fill');
  });
});
