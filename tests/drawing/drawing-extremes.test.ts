// Sites at the ends of what a job may say: every drawing still has its texts apart and its figures.
import { describe, expect, test } from 'vitest';
import { drawSection, drawProfile } from 'settline/drawing';
import { planJob, type JobInput } from 'settline/job';
import { jobOf, type Site } from '../properties/site-jobs.js';
import { drawingsOf, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf } from './read-svg.js';
import { measuredWidth } from './type-widths.js';

const inches = (us: string) => ({ us, metric: us });
const plain: Site = {
  length: inches('600 in'),
  width: inches('200 in'),
  paver: inches('3 1/4 in'),
  bedding: inches('1 in'),
  base: inches('8 in'),
  height: inches('15 in'),
  old: inches('3 in'),
  grounds: Array.from({ length: 4 }, () => inches('17 1/2 in')),
  offsets: Array.from({ length: 4 }, () => inches('0 in')),
  finishes: Array.from({ length: 4 }, () => inches('1000 in')),
  isBestFit: false,
  isLevelled: true,
};

const job = (change: Partial<Site>): JobInput => jobOf({ ...plain, ...change }, 'us');

/** The site with its only pavement changed. */
const paved = (change: Partial<JobInput['pavements'][number]>): JobInput => {
  const of = job({});
  return { ...of, pavements: of.pavements.map((one) => ({ ...one, ...change })) };
};

const layersOf = (count: number) => [
  { kind: 'paver' as const, thickness: '3 1/4 in' },
  { kind: 'bedding' as const, thickness: '1 in', material: 'sand' },
  ...Array.from({ length: count }, (_, k) => ({
    kind: k === 0 ? ('base' as const) : ('sub-base' as const),
    name: `stone ${k + 1}`,
    thickness: '1/16 in',
    material: 'stone',
  })),
];

const SITES: readonly (readonly [string, JobInput])[] = [
  ['a string on finished grade', job({ height: inches('0 in') })],
  ['a string 5 m up', job({ height: inches('196 in') })],
  ['a base of many lifts', job({ base: inches('180 in') })],
  ['a base of a sixteenth', job({ base: inches('1/16 in') })],
  ['ground far below the subgrade', job({ grounds: plain.grounds.map(() => inches('150 in')) })],
  ['ground above the string', job({ grounds: plain.grounds.map(() => inches('-100 in')) })],
  [
    'ground up and down',
    job({ grounds: ['0 in', '150 in', '27 1/4 in', '27 1/4 in'].map(inches) }),
  ],
  ['a steep string', job({ finishes: ['0 in', '120 in', '240 in', '360 in'].map(inches) })],
  ['nothing but walls', paved({ edges: ['building', 'slab', 'adjoining', 'restraint'] })],
  ['nothing said of the edges', paved({ edges: [null, null, null, null] })],
  ['a very flat side of the dig', paved({ batter: 4 })],
  ['twenty thin layers', paved({ layers: layersOf(18) })],
  ['a tapered base', { ...paved({ taperedBase: true }), edgeRestraintWidth: '3 in' }],
];

describe.each(SITES)('%s', (_name, site) => {
  const plan = planJob(site);

  test('has its texts apart and inside', () => {
    for (const style of STYLES) {
      for (const svg of drawingsOf(plan, style)) expect(layoutFaults(svg)).toEqual([]);
    }
  });

  test('has every depth, lift and thickness', () => {
    const root = readXml(drawSection(plan, { system: 'us', pavement: 'drive' }));
    const { buildUp, lifts } = plan.pavements[0] ?? { buildUp: { layers: [] }, lifts: [] };
    const inside = lifts.filter(({ belowFinish }) =>
      buildUp.layers.every(({ top }) => !top.equals(belowFinish)),
    );
    expect(textsOf(root, 'depth')).toHaveLength(1 + buildUp.layers.length + inside.length + 1);
    expect(textsOf(root, 'thickness')).toHaveLength(buildUp.layers.length);
    expect(textsOf(root, 'layer').every((text) => text.length > 1)).toBe(true);
  });
});

describe('what is drawn', () => {
  const classesOf = (site: JobInput) => {
    const picture = pictureOf(
      readXml(drawSection(planJob(site), { system: 'us', pavement: 'drive' })),
    );
    return [
      ...elementsOf(picture, 'rect'),
      ...elementsOf(picture, 'polyline'),
      ...elementsOf(picture, 'polygon'),
    ].map(({ attributes }) => attributes['class']);
  };

  test('a restraint where one has a width, and none where it has not', () => {
    const count = (site: JobInput) => classesOf(site).filter((name) => name === 'stake').length;
    expect(count({ ...job({}), edgeRestraintWidth: '3 in' })).toBe(2);
    expect(count(job({}))).toBe(1);
  });

  test('nothing but a blank where something stands at the edge already', () => {
    const walls = planJob(paved({ edges: ['building', 'slab', 'adjoining', 'restraint'] }));
    const svg = drawSection(walls, { system: 'us', pavement: 'drive' });
    expect(textsOf(readXml(svg), 'note').join(' ')).toContain(
      'Edge shown: 1 (A-B), building. What stands there is left blank.',
    );
    expect(svg).not.toContain('-old-paving)');
    expect(textsOf(readXml(svg), 'reach')).toEqual([]);
  });

  test('texts of a low dig no deeper than the dig', () => {
    const low = planJob(job({ grounds: plain.grounds.map(() => inches('26 in')) }));
    const picture = pictureOf(readXml(drawSection(low, { system: 'us', pavement: 'drive' })));
    const turned = elementsOf(picture, 'text').filter(
      ({ attributes }) => attributes['transform'] !== undefined,
    );
    const subgrade = Math.max(
      ...elementsOf(picture, 'polyline')
        .filter(({ attributes }) => attributes['class'] === 'dig')
        .flatMap(({ attributes }) => (attributes['points'] ?? '').split(' '))
        .map((pair) => Number(pair.split(',')[1])),
    );
    const old = elementsOf(picture, 'polygon').find(({ attributes }) =>
      (attributes['class'] ?? '').endsWith(' ground-old-paving'),
    );
    const lowest = Math.max(
      subgrade,
      ...(old?.attributes['points'] ?? '').split(' ').map((pair) => Number(pair.split(',')[1])),
    );
    expect(turned.length).toBeGreaterThan(1);
    for (const one of turned) {
      const half = measuredWidth(one.text, numberOf(one, 'font-size')) / 2;
      expect(numberOf(one, 'y') + half).toBeLessThanOrEqual(lowest);
    }
  });

  test('no edge of a dig where the ground is filled all over', () => {
    expect(classesOf(job({}))).toContain('dig');
    expect(classesOf(job({ grounds: plain.grounds.map(() => inches('150 in')) }))).not.toContain(
      'dig',
    );
  });

  test('a stake that stands before the first of its string is drawn in its place', () => {
    const site = job({});
    const turned: JobInput = {
      ...site,
      stringLines: site.stringLines.map((line) => ({
        ...line,
        stakes: [...line.stakes].reverse(),
      })),
    };
    const root = readXml(drawProfile(planJob(turned), { system: 'us', string: 'south' }));
    expect(textsOf(root, 'row-stake')).toEqual(['S3', 'S2', 'S1', 'S0']);
  });
});
