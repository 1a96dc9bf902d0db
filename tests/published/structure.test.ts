// Flexible pavements: the equation, its layers and its traffic, as worked examples print them.
import { describe } from 'vitest';
import {
  allowableEsals,
  designEsals,
  layerCoefficient,
  modulusFromCbr,
  requiredModulus,
  requiredStructuralNumber,
  serviceLife,
  structuralNumber,
  structuralThickness,
} from 'settline/structure';
import { expectExact, expectMisprint, expectPrinted, expectWithin } from '../printed.js';
import { published, publishedEach } from './published.js';

const layer = (thickness: string, coefficient: string, drainage = '1') => ({
  name: thickness,
  thickness,
  coefficient,
  drainage,
});

describe('worked solution to a highway-engineering textbook problem (4 in HMA / 8 in base / 8 in sub-base)', () => {
  const stack = structuralNumber({
    layers: [layer('4 in', '0.44'), layer('8 in', '0.30'), layer('8 in', '0.11')],
  });
  const road = {
    structuralNumber: stack.structuralNumber,
    overallDeviation: '0.5',
    serviceabilityLoss: '2',
    resilientModulus: '10000 psi',
  } as const;

  published(
    { source: 'highway-solution-8-in', section: 'structural number', kind: 'printed' },
    'structural number: 5.039 is printed, the terms 1.76 + 2.40 + 0.88 make 5.04',
    () => {
      expectMisprint(stack.structuralNumber, '5.039', '5.040');
    },
  );

  published(
    { source: 'highway-solution-8-in', section: 'traffic at 90 %', kind: 'printed' },
    'traffic at 90 %',
    () => {
      expectPrinted(allowableEsals({ ...road, reliability: 90 }).esals, '26128077');
    },
  );

  published(
    { source: 'highway-solution-8-in', section: 'traffic at 99 %', kind: 'printed' },
    'traffic at 99 %: the deviate is printed -2.362, and the answer is that of -2.326',
    () => {
      const { esals, standardNormalDeviate } = allowableEsals({ ...road, reliability: 99 });
      expectMisprint(standardNormalDeviate, '-2.362', '-2.326');
      expectPrinted(esals, '7854299');
    },
  );

  published(
    { source: 'highway-solution-8-in', section: 'traffic of a day', kind: 'printed' },
    'traffic of a day',
    () => {
      const axles = [
        { name: '20 kip single', perDay: 1080, factor: '1.51' },
        { name: '24 kip single', perDay: 400, factor: '3.03' },
        { name: '40 kip tandem', perDay: 680, factor: '2.08' },
      ];
      expectPrinted(designEsals({ axles, years: 1 }).perDay, '4257.2');
    },
  );

  published({ source: 'highway-solution-8-in', section: 'life', kind: 'printed' }, 'life', () => {
    const { firstYear } = designEsals({ perDay: '4257.2', years: 1 });
    const life = (esals: number) => serviceLife({ esals, firstYear }).years ?? NaN;
    // 16.82 is printed; 26128077 over 4257.2 x 365 is 16.8148
    expectMisprint(life(26128077), '16.82', '16.81');
    // 7854299 over 4257.2 x 365 is 5.0546
    expectPrinted(life(7854299), '5.05');
  });
});

describe('worked solution to a highway-engineering textbook problem (subgrade modulus unknown)', () => {
  // 4 in HMA, 4 in HMA base, 8 in stone
  const stack = structuralNumber({
    layers: [layer('4 in', '0.44'), layer('4 in', '0.40'), layer('8 in', '0.11')],
  });
  const axles = [
    { name: '8 kip single', perDay: 1300, factor: '0.03932' },
    { name: '15 kip tandem', perDay: 900, factor: '0.04308' },
    { name: '40 kip single', perDay: 20, factor: '22.164' },
    { name: '40 kip tandem', perDay: 200, factor: '2.042' },
  ];

  published(
    {
      source: 'highway-solution-modulus',
      section: 'structural number and traffic',
      kind: 'printed',
    },
    'structural number and traffic',
    () => {
      expectPrinted(stack.structuralNumber, '4.24');
      const { perDay, esals } = designEsals({ axles, years: 12 });
      expectPrinted(perDay, '941.568');
      expectPrinted(esals, '4124067.84');
    },
  );

  published(
    { source: 'highway-solution-modulus', section: 'modulus', kind: 'printed' },
    'modulus of the subgrade',
    () => {
      const ground = requiredModulus({
        esals: '4124067.84',
        structuralNumber: stack.structuralNumber,
        reliability: 70,
        overallDeviation: '0.5',
        serviceabilityLoss: 2,
      });
      expectExact(ground.standardNormalDeviate, -0.524);
      expectPrinted(ground.resilientModulus.toNumber('psi'), '5250.31');
    },
  );
});

describe('AASHTO design nomograph lecture notes', () => {
  publishedEach(
    {
      source: 'nomograph-notes',
      section: 'design example, bearing ratio 3.5',
      kind: 'reading of a chart',
    },
    [
      ['5250 psi', '5'],
      ['20000 psi', '3.2'],
    ],
  )('over %s', ([resilientModulus, printed]) => {
    const { structuralNumber: needed } = requiredStructuralNumber({
      esals: 5_000_000,
      reliability: 95,
      overallDeviation: '0.35',
      serviceabilityLoss: 2,
      resilientModulus,
    });
    expectWithin(needed, printed, { within: 0.2, because: 'read off a chart by hand' });
  });

  published(
    { source: 'nomograph-notes', section: 'design example, bearing ratio 3.5', kind: 'printed' },
    'modulus by the bearing ratio',
    () => {
      const { resilientModulus } = modulusFromCbr({ cbr: '3.5' });
      expectExact(resilientModulus.to('psi').toString(), '5250');
    },
  );
});

describe('pavement design thickness using the AASHTO 1993 method', () => {
  // printed without the sign
  publishedEach(
    {
      source: 'reliability-table',
      section: 'step 3, table of standard normal deviates',
      kind: 'printed',
    },
    [
      [50, '0.000'],
      [60, '0.253'],
      [70, '0.524'],
      [75, '0.674'],
      [90, '1.282'],
      [92, '1.405'],
      [93, '1.476'],
      [94, '1.555'],
      [95, '1.645'],
      [96, '1.751'],
      [97, '1.881'],
      [98, '2.054'],
      [99.9, '3.090'],
    ],
  )('at %d percent', ([reliability, printed]) => {
    expectPrinted(-deviateAt(reliability), printed);
  });

  publishedEach(
    {
      source: 'reliability-table',
      section: 'step 3, table of standard normal deviates',
      kind: 'printed',
    },
    [
      [80, '0.841', '0.842'],
      [85, '1.037', '1.036'],
      [91, '1.340', '1.341'],
      [99, '2.327', '2.326'],
      [99.99, '3.750', '3.719'],
    ],
  )('at %d percent the table is not the distribution', ([reliability, printed, right]) => {
    expectMisprint(-deviateAt(reliability), printed, right);
  });

  published(
    {
      source: 'reliability-table',
      section: 'step 3, table of standard normal deviates',
      kind: 'printed',
    },
    'a value of the table can be given in place of that of the distribution',
    () => {
      const { standardNormalDeviate } = allowableEsals({
        ...ROAD,
        standardNormalDeviate: '-2.327',
      });
      expectPrinted(-standardNormalDeviate, '2.327');
    },
  );

  const ROAD = {
    structuralNumber: 3,
    reliability: 99,
    overallDeviation: '0.5',
    serviceabilityLoss: 2,
    resilientModulus: '5000 psi',
  } as const;

  function deviateAt(reliability: number): number {
    return allowableEsals({ ...ROAD, reliability }).standardNormalDeviate;
  }
});

describe('thickness of a layer', () => {
  published(
    { source: 'mine-permit-file', section: 'appendix A, page 6', kind: 'printed' },
    'stone added to 6 in of base',
    () => {
      const added = structuralThickness({ needed: '1.36', above: '0.84', coefficient: '0.14' });
      expectPrinted(added.thickness.toNumber('in'), '3.7');
      expectExact(added.rounded.to('in').toString(), '4');
    },
  );

  published(
    { source: 'highway-solution-interstate', section: 'steps 1 to 4', kind: 'printed' },
    'sub-base of an urban interstate',
    () => {
      const last = structuralThickness({
        needed: '4.4',
        above: '3.984',
        coefficient: '0.1',
        drainage: '0.8',
      });
      expectPrinted(last.thickness.toNumber('in'), '5.2');
      expectExact(last.rounded.to('in').toString(), '6');
    },
  );

  published(
    { source: 'highway-solution-two-layers', section: 'whole page', kind: 'printed' },
    'asphalt over a stone base',
    () => {
      const asphalt = structuralThickness({ needed: '4.5', coefficient: '0.4' });
      expectPrinted(asphalt.thickness.toNumber('in'), '11.25');
      expectPrinted(asphalt.structuralNumber, '4.8');
      const stone = structuralThickness({
        needed: '5.5',
        above: asphalt.structuralNumber,
        coefficient: '0.13',
        drainage: '0.9',
      });
      expectPrinted(stone.thickness.toNumber('in'), '5.9829');
      expectExact(stone.rounded.to('in').toString(), '6');
    },
  );
});

describe('growth of traffic', () => {
  // 1350 x 0.16 x 3.5 x 1.1 a day
  published(
    { source: 'design-sheet', section: 'example 1, steps 1 to 3', kind: 'printed' },
    'design sheet, example 1',
    () => {
      const sheet = designEsals({
        perDay: String(1350 * 0.16 * 3.5 * 1.1),
        years: 20,
        growth: '0.04',
      });
      expectPrinted(sheet.firstYear, '303534');
      expectPrinted(sheet.growthFactor, '29.78');
      expectPrinted(sheet.esals / 1e6, '9.04');
    },
  );

  // the same, example 2: the year printed is 0.06 % more than its classes make
  published(
    { source: 'design-sheet', section: 'example 2, steps 1 to 3', kind: 'printed' },
    'design sheet, example 2',
    () => {
      const axles = [749, 547, 379, 122].map((perDay, k) => ({
        name: `class ${k + 1}`,
        perDay,
        factor: ['0.1', '4', '4.4', '1.8'][k] ?? '',
      }));
      const sheet = designEsals({ axles, years: 20, growth: '0.045', lane: '0.9' });
      const because = 'the sheet adds up its classes to 0.06 % more than they make';
      expectWithin(sheet.firstYear, '1364089.68', { within: 1364, because });
      expectPrinted(sheet.growthFactor, '31.37');
      expectWithin(sheet.esals / 1e6, '42.79', { within: 0.04, because });
    },
  );

  // 7.1499 was rounded twice, to 7.15 and 7.2
  published(
    { source: 'transport-course', section: 'page 10', kind: 'printed' },
    'lecture example',
    () => {
      const road = designEsals({
        perDay: 400 * 2.5,
        direction: '0.75',
        years: 15,
        growth: '0.075',
      });
      expectMisprint(road.esals / 1e6, '7.2', '7.1');
    },
  );

  // the page cuts 14.4866 off to 14.486
  published(
    { source: 'divided-highway-question', section: 'whole page', kind: 'printed' },
    'divided highway',
    () => {
      const road = designEsals({
        perDay: 2500 * 3.5,
        direction: '0.75',
        years: 10,
        growth: '0.08',
      });
      expectMisprint(road.growthFactor, '14.486', '14.487');
      expectPrinted(road.esals / 1e6, '34.7');
    },
  );

  published(
    { source: 'load-distribution-example', section: 'whole page', kind: 'printed' },
    'load distribution',
    () => {
      const road = designEsals({
        perDay: 4000 * 3.5,
        direction: '0.75',
        years: 15,
        growth: '0.075',
      });
      expectPrinted(road.esals / 1e6, '100');
    },
  );

  published(
    { source: 'construction-growth-problem', section: 'whole page', kind: 'printed' },
    'growth during construction',
    () => {
      const road = designEsals({
        perDay: 1000 * 3,
        direction: '0.75',
        years: 15,
        growth: '0.1',
        yearsBefore: 5,
      });
      // the page prints the traffic of a day at the opening, before the share in the lane
      expectPrinted(road.firstYear / 365 / 0.75, '4831.53');
      expectPrinted(road.esals / 1e6, '42.023');
    },
  );
});

describe('transportation engineering exam sheet (layer-coefficient relations)', () => {
  // The values beside the moduli stand in the nomograph notes and the interstate problem and may be
  // chart readings.
  publishedEach({ source: 'layer-coefficient-sheet', section: 'problem 4', kind: 'printed' }, [
    ['base', '20000 psi', '0.09'],
    ['base', '31000 psi', '0.14'],
    ['sub-base', '11000 psi', '0.08'],
    ['sub-base', '13500 psi', '0.10'],
  ] as const)('%s of %s', ([kind, modulus, printed]) => {
    expectPrinted(layerCoefficient({ layer: kind, modulus }).coefficient, printed);
  });
});
