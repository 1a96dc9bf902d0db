import { relativeCompaction } from 'settline/checks';
import { describe, expect } from 'vitest';
import { orderPacks } from 'settline/materials';
import { loads, soilFactors, stateVolume, toState, type StateVolume } from 'settline/volumes';
import { expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published, publishedEach } from './published.js';

published(
  { source: 'soil-factors-text', section: 'sentence under Table 10-1', kind: 'printed' },
  '100 yd3 of sand in the bank is 111 loose and 95 compacted',
  () => {
    const sand = soilFactors('sand');
    const bank = stateVolume('100 yd3', 'bank');
    expectExact(toState(bank, 'loose', sand).to('yd3').toString(), '111');
    expectExact(toState(bank, 'compacted', sand).to('yd3').toString(), '95');
  },
);

const truckLoads = ({ volume }: StateVolume<'loose'>, holds: string): number =>
  orderPacks({ volume, packs: [{ name: 'truck', holds }] }).count;

describe('Estimating in Building Construction, chapter 9 Excavation', () => {
  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-2', kind: 'printed' },
    'Example 9-2: 1000 bank yards at 30 % swell, 7 yd3 trucks',
    () => {
      const loose = toState(stateVolume('1000 yd3', 'bank'), 'loose', {
        loosePerBank: '1.30',
        compactedPerBank: 1,
      });
      expectExact(loose.to('yd3').toString(), '1300');
      expectExact(truckLoads(loose, '7 yd3'), 186);
    },
  );

  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-3', kind: 'printed' },
    'Example 9-3: 500 compacted yards, compacted over bank 0.95, 15 % swell',
    () => {
      const factors = { loosePerBank: '1.15', compactedPerBank: '0.95' };
      const fill = stateVolume('500 yd3', 'compacted');
      expectPrinted(toState(fill, 'bank', factors).toNumber('yd3'), '526');
      const loose = toState(fill, 'loose', factors);
      expectPrinted(loose.toNumber('yd3'), '605');
      expectExact(truckLoads(loose, '7 yd3'), 87);
    },
  );

  published(
    { source: 'estimating-textbook', section: 'chapter 9, Example 9-14', kind: 'printed' },
    'Example 9-14: 407 bank yards at 30 % swell, 7 yd3 trucks, 76 loads',
    () => {
      const bank = stateVolume({ value: '10997', unit: 'ft3' }, 'bank');
      expectPrinted(bank.toNumber('yd3'), '407');
      const loose = toState(bank, 'loose', { loosePerBank: 1.3, compactedPerBank: 0.9 });
      expectPrinted(loose.toNumber('yd3'), '529');
      const trucks = loads({
        volume: loose,
        looseDensity: '100 lb/yd3',
        boxVolume: '7 yd3',
        payload: '100 t',
      });
      expectExact(trucks.count, 76);
      expect(trucks.limitedBy).toBe('volume');
    },
  );
});

describe('Equipment management solution manual, chapter 5, swell and shrinkage from densities', () => {
  // bank 2800, loose 2295, compacted 3256 lb/yd3
  const factors = { loosePerBank: '2800/2295', compactedPerBank: '2800/3256' };

  published(
    { source: 'equipment-solutions', section: '5-3', kind: 'derived' },
    '817 compacted yards take 950.05 bank yards',
    () => {
      const bank = toState(stateVolume('817 yd3', 'compacted'), 'bank', factors);
      expectPrinted(bank.toNumber('yd3'), '950.05');
    },
  );

  published(
    { source: 'equipment-solutions', section: '5-3', kind: 'printed' },
    'swell is 22 percent, and what is left over fills 84 trucks of 30 yd3',
    () => {
      const bank = stateVolume('1 yd3', 'bank');
      expectPrinted((toState(bank, 'loose', factors).toNumber('yd3') - 1) * 100, '22');
      const used = toState(stateVolume('817 yd3', 'compacted'), 'bank', factors).volume;
      const left = stateVolume(stateVolume('3000 yd3', 'bank').volume.minus(used), 'bank');
      const loose = toState(left, 'loose', factors);
      expectExact(truckLoads(loose, '30 yd3'), 84);
    },
  );
});

describe('borrow pits and trucks', () => {
  published(
    { source: 'void-ratio-question', section: 'answer', kind: 'printed' },
    'a fill of 150 000 m3 at a void ratio of 0.8 takes 200 000 m3 at 1.4',
    () => {
      const factors = { loosePerBank: 1, compactedPerBank: '1.8/2.4' };
      const fill = stateVolume('150000 m3', 'compacted');
      expectExact(toState(fill, 'bank', factors).to('m3').toString(), '200000');
    },
  );

  published(
    { source: 'borrow-water-question', section: 'answer', kind: 'printed' },
    '75 000 m3 of fill at 1790 kg/m3 dry from a pit at 1540 kg/m3 wet and 8 %',
    () => {
      const { dryDensity } = relativeCompaction({
        wetDensity: '1540 kg/m3',
        moisture: '0.08',
        maximumDryDensity: '1790 kg/m3',
      });
      expectPrinted(dryDensity.toNumber('kg/m3'), '1425.93');
      const factors = { loosePerBank: 1, compactedPerBank: '1540/1933.2' };
      const bank = toState(stateVolume('75000 m3', 'compacted'), 'bank', factors);
      expectPrinted(bank.toNumber('m3'), '94149');
    },
  );

  published(
    { source: 'ton-in-the-ground', section: 'solution', kind: 'printed' },
    'a ton at 3400 lb/yd3 in the bank and 2700 lb/yd3 loose: 0.59 and 0.74 yd3',
    () => {
      const factors = { loosePerBank: '3400/2700', compactedPerBank: 1 };
      const bank = stateVolume({ value: '2000/3400', unit: 'yd3' }, 'bank');
      expectPrinted(bank.toNumber('yd3'), '0.59');
      expectPrinted(toState(bank, 'loose', factors).toNumber('yd3'), '0.74');
      expectPrinted(
        toState(stateVolume('100 yd3', 'bank'), 'loose', factors).toNumber('yd3'),
        '126',
      );
    },
  );
});

describe('load factors beside swell', () => {
  const citation = { source: 'load-factor-table', section: 'table', kind: 'printed' } as const;
  const loadFactor = (swell: number) =>
    toState(stateVolume('1 yd3', 'loose'), 'bank', {
      loosePerBank: `${100 + swell}/100`,
      compactedPerBank: 1,
    }).toNumber('yd3');

  publishedEach(citation, [
    ['coal, anthracite', 35, '0.74'],
    ['earth, dry', 25, '0.80'],
    ['gravel', 12, '0.89'],
    ['gypsum', 74, '0.57'],
    ['hardpan', 50, '0.67'],
    ['limestone', 67, '0.60'],
    ['sandstone', 54, '0.65'],
  ])('%s: %d percent', ([, swell, printed]) => {
    expectPrinted(loadFactor(swell), printed);
  });

  publishedEach(citation, [
    ['earth, wet', 25, '0.89', '0.80'],
    ['clay, wet', 40, '0.72', '0.71'],
    ['rock, blasted', 65, '0.60', '0.61'],
  ])('%s: %d percent is printed beside another factor', ([, swell, printed, right]) => {
    expectMisprint(loadFactor(swell), printed, right);
  });
});
