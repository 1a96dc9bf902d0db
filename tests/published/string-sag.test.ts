import { describe } from 'vitest';
import { gradeLine } from 'settline/grading';
import { stringSag, stringsAlongEdge } from 'settline/string-line';
import { length } from 'settline/units';
import { expectDerived, expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

describe('sag', () => {
  published(
    { source: 'tight-wire-note', section: 'formula and example', kind: 'printed' },
    'of a tight wire',
    () => {
      // 0.0007 lb/ft at 30 lb, 0.0003 ft in 10 ft and 0.03 ft in 100 ft
      const wire = { tension: '30 lbf', weightPerLength: '0.0007 lb/ft' } as const;
      expectPrinted(stringSag({ ...wire, span: '10 ft' }).sagAtMidspan.toNumber('ft'), '0.0003');
      const long = stringSag({ ...wire, span: '100 ft', from: '25 ft' });
      expectPrinted(long.sagAtMidspan.toNumber('ft'), '0.03');
      expectDerived(long.sagAtMidspan.toNumber('ft'), '0.0291667');
      expectDerived(long.catenarySag.toNumber('ft'), '0.0291667');
      // the quarter point is printed as 3/4 of the rounded 0.03
      expectMisprint(long.at?.sag.toNumber('ft') ?? Number.NaN, '0.0225', '0.021875');
    },
  );

  published(
    { source: 'line-sag-example', section: 'worked sentence', kind: 'printed' },
    'of a line of 500 m',
    () => {
      const { sagAtMidspan } = stringSag({
        span: '500 m',
        tension: '10000 kgf',
        weightPerLength: '1 kg/m',
      });
      expectExact(sagAtMidspan.to('m').toString(), '3.125');
    },
  );
});

const plain = { offset: '0 m', crossSlope: '0%', carriesCrossSlope: false } as const;

describe('lines at a height above a grade', () => {
  published(
    { source: 'curve-stakeout', section: 'sewer stakeout, text of Figure 10-19', kind: 'printed' },
    'cuts from hubs to a sewer',
    () => {
      // The grade of 2.18 % falls the way the stations run down; hubs 8 ft off the line.
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
      expectExact(
        stakes.map(({ aboveGround }) => aboveGround?.negated().to('ft').toString()),
        ['5.55', '4.07'],
      );
    },
  );

  published(
    { source: 'sewer-rails-question', section: 'question 8(a)', kind: 'derived' },
    'sight rails on a grade of 1 %',
    () => {
      // The invert is printed as 1066.48, which would take a rod of 23.5 m; with 1086.48 it is 3.50
      // m. The heights of the rails are the same either way.
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
    },
  );

  published(
    { source: 'sewer-1-in-90', section: 'steps 1 to 3', kind: 'printed' },
    'sight rails on a grade of 1 in 90',
    () => {
      const sewer = gradeLine({
        points: [
          { station: '0 m', elevation: '1286.98 m' },
          { station: '150 m', grade: '1:90' },
        ],
      });
      const rod = length('1288.64 m').plus(length('1.5 m')).minus(length('1286.98 m'));
      expectPrinted(rod.toNumber('m'), '3.16');
      const { stakes } = stringsAlongEdge({
        ...plain,
        grade: sewer,
        stringHeight: rod,
        stakes: [
          { id: 'X', station: '0 m', ground: '1288.64 m' },
          { id: 'W', station: '150 m', ground: '1290.041 m' },
        ],
      });
      expectPrinted(stakes[1]?.finishedGrade.toNumber('m') ?? 0, '1288.647');
      expectPrinted(stakes[1]?.aboveGround?.toNumber('m') ?? 0, '1.766');
    },
  );

  published(
    {
      source: 'elementary-surveying',
      section: 'problems 23.11 and 23.12, statements',
      kind: 'derived',
    },
    'batter boards 6 ft above a pipe',
    () => {
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
        expectPrinted(stake?.finishedGrade.toNumber('ft') ?? Number.NaN, invert);
        // the cut is what the board is above the invert less what it is above the ground
        const board = stake?.aboveGround ?? length('0 ft');
        expectPrinted(length('6 ft').minus(board).toNumber('ft'), cut);
        expectPrinted(instrument.minus(stake?.elevation ?? instrument).toNumber('ft'), rod);
      });
    },
  );

  published(
    { source: 'sewer-inverts-problem', section: 'problem text', kind: 'derived' },
    'inverts on a grade of -1 %',
    () => {
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
      expectExact(
        stakes.map(({ elevation }) => elevation.to('ft').toFixed(2)),
        printed,
      );
    },
  );
});
