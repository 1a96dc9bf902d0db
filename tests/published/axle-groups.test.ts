import { describe } from 'vitest';
import { axleGroupLimit, checkAxleGroups } from 'settline/haul';
import { AXLE_LIMITS } from 'settline/sources';
import { expectExact } from '../printed.js';
import { published } from './published.js';

const pounds = (axles: number, feet: number) =>
  axleGroupLimit({ axles, spread: { value: feet, unit: 'ft' } })
    .limit.to('lb')
    .toString();

describe('California Vehicle Code 35551, table as printed in Assembly Bill 1953 (2023-2024)', () => {
  // the table caps groups of two axles at 34,000 (to 8 ft) and 40,000 lb (two single axles), and
  // longer groups at what their inner groups may carry; the rows here are those of the formula alone
  published(
    { source: 'axle-weight-table', section: 'two axles', kind: 'printed' },
    '2 axles, 9 and 10 ft',
    () => {
      expectExact([pounds(2, 9), pounds(2, 10)], ['39000', '40000']);
    },
  );

  published(
    { source: 'axle-weight-table', section: 'three axles', kind: 'printed' },
    '3 axles, 9 to 28 ft: exact halves of 500 lb are printed down',
    () => {
      const printed = [
        42500, 43500, 44000, 45000, 45500, 46500, 47000, 48000, 48500, 49500, 50000, 51000, 51500,
        52500, 53000, 54000, 54500, 55500, 56000, 57000,
      ];
      expectExact(
        printed.map((_, index) => pounds(3, 9 + index)),
        printed.map(String),
      );
    },
  );

  published(
    { source: 'axle-weight-table', section: 'four axles', kind: 'printed' },
    '4 axles, 12 to 28 ft',
    () => {
      const printed = [
        50000, 50500, 51500, 52000, 52500, 53500, 54000, 54500, 55500, 56000, 56500, 57500, 58000,
        58500, 59500, 60000, 60500,
      ];
      expectExact(
        printed.map((_, index) => pounds(4, 12 + index)),
        printed.map(String),
      );
    },
  );
});

describe('Bridge Formula Weights', () => {
  published(
    { source: 'bridge-formula', section: 'worked example', kind: 'printed' },
    'two axles 4 ft apart: 34,000 lb',
    () => {
      expectExact(pounds(2, 4), '34000');
    },
  );

  published(
    { source: 'bridge-formula', section: 'exception for two tandems', kind: 'printed' },
    'tandems 36 to 38 ft apart: 66,000 to 67,500 lb by the formula, 68,000 by the exception',
    () => {
      expectExact([pounds(4, 36), pounds(4, 38)], ['66000', '67500']);
      const { groups } = checkAxleGroups({
        axles: ['0 ft', '4 ft', '32 ft', '36 ft'].map((position, k) => ({ id: `${k}`, position })),
        caps: 'us-interstate',
      });
      const four = groups.find(({ axles }) => axles.length === 4);
      expectExact(four?.limit?.to('lb').toString(), '68000');
    },
  );
});

published(
  { source: 'vehicle-weights', section: '23 CFR 658.17', kind: 'printed' },
  'FHWA questions and answers, 23 CFR 658.17: 20,000, 34,000, 80,000 lb; 40 and 96 in',
  () => {
    const { single, tandem, gross, singleSpread, tandemSpread } = AXLE_LIMITS['us-interstate'];
    expectExact([single.value, tandem.value, gross.value], ['20000', '34000', '80000']);
    expectExact([singleSpread.value, tandemSpread.value], ['40', '96']);
  },
);
