import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, test } from 'vitest';
import { drawLayerCheck, drawStraightedge, type DrawOptions } from 'settline/drawing';
import { checkCompaction, checkFall, describeCheckMove, checkFlatness } from 'settline/checks';
import { checkJob, planJob, renderCheckSheet } from 'settline/job';
import { formatLength } from 'settline/units';
import { cedarCourtJob } from '../cedar-court.js';
import { expectFault } from '../faults.js';
import { CHECK_DRAWINGS, checkedSubgrade, flatness, thickness } from './checked.js';
import { STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf, type Element } from './read-svg.js';

const US: DrawOptions = { system: 'us' };
const words = (root: Element): string[] => elementsOf(root, 'text').map(({ text }) => text);
const styled = (root: Element, name: string, style: string): Element[] =>
  elementsOf(root, name).filter(({ attributes }) => attributes['class'] === style);

describe('a surface of a checked job', () => {
  const surface = checkedSubgrade();
  const root = readXml(drawLayerCheck(surface, US));
  const picture = pictureOf(root);

  test('has each stake with its size, high or low in words, and its verdict', () => {
    expect(textsOf(root, 'point')).toEqual([
      'K1: 0 in ok',
      'K2: 7/8 in high OUT',
      'K3: 1 in low OUT',
      'F1: 1/4 in high ok',
    ]);
  });

  test('has the figures of the check sheet', () => {
    const sheet = renderCheckSheet(
      checkJob(planJob(cedarCourtJob()), {
        readings: [{ stake: 'K2', surface: 'subgrade', belowString: '35 7/8 in' }],
        tolerances: { subgrade: { over: '1/2 in', under: '3/4 in' } },
      }),
      US,
    );
    expect(sheet).toMatch(/K2 +36 3\/4 +35 7\/8/);
    expect(words(root)).toContain('string kerb: plan 36 3/4, is 35 7/8 in');
    expect(words(root).join(' ')).toContain('Allowed: 1/2 in high to 3/4 in low.');
  });

  test('marks verdicts by shape: rings, triangles up where high and down where low', () => {
    expect(elementsOf(picture, 'circle')).toHaveLength(2);
    const tips = styled(picture, 'polygon', 'solid').map(({ attributes }) => {
      const [tip = 0, foot = 0] = (attributes['points'] ?? '')
        .split(' ')
        .map((pair) => Number(pair.split(',')[1]));
      return tip < foot ? 'up' : 'down';
    });
    expect(tips).toEqual(['up', 'down']);
  });

  test('stands each mark as far from the plan as it was measured', () => {
    const zero = numberOf(styled(picture, 'line', 'tick')[0] ?? root, 'x1');
    const [high, low] = styled(picture, 'polygon', 'solid').map(
      ({ attributes }) => Number((attributes['points'] ?? '').split(',')[0]) - zero,
    );
    expect((high ?? 0) / (low ?? 1)).toBeCloseTo(-7 / 8, 2);
    const allowed = styled(picture, 'line', 'allowed')[0] ?? root;
    expect((numberOf(allowed, 'x2') - zero) / (zero - numberOf(allowed, 'x1'))).toBeCloseTo(
      2 / 3,
      2,
    );
  });

  test('never fills a low subgrade with soil, and names the stakes that nobody read', () => {
    const all = words(root).join(' ');
    expect(all).toMatch(/fill with base stone, \S+.* loose, and compact; never with soil/);
    expect(all).toContain('Not measured: K4, K5, F2, F3.');
    expect(elementsOf(root, 'desc')[0]?.text).toMatch(
      /^4 readings\. .*K3: 1 in low OUT, fill with/,
    );
  });
});

describe('a checked layer', () => {
  test('has an average with its own limits', () => {
    const check = thickness();
    const root = readXml(drawLayerCheck(check, US));
    expect(textsOf(root, 'point').map((text) => text.split(':')[0])).toEqual([
      'a',
      'b',
      'c',
      'average',
    ]);
    expect(words(root)).toContain(describeCheckMove(check.readings[0]?.move ?? null, { as: 'in' }));
  });

  test.each([
    [
      'fall',
      checkFall({
        layer: 'pavers',
        readings: [
          { id: 'x', fall: '1 in', run: '10 ft' },
          { id: 'y', fall: '3 in', run: '10 ft' },
        ],
        tolerance: { minimum: '1.5%' },
      }),
      ['x: 0.8% OUT', 'y: 2.5% ok'],
    ],
    [
      'compaction',
      checkCompaction({
        layer: 'base',
        maximumDryDensity: '140 lb/ft3',
        test: 'modified',
        readings: [{ id: 'p', wetDensity: '130 lb/ft3', moisture: 0.05 }],
        tolerance: { minimumPercent: 95 },
      }),
      ['p: 88.4% OUT'],
    ],
  ] as const)('of %s', (_kind, check, points) => {
    for (const style of STYLES) expect(layoutFaults(drawLayerCheck(check, style))).toEqual([]);
    const root = readXml(drawLayerCheck(check, US));
    expect(textsOf(root, 'point')).toEqual(points);
    const count = points.length === 1 ? '1 reading. ' : '2 readings. ';
    expect(elementsOf(root, 'desc')[0]?.text.startsWith(count)).toBe(true);
  });

  test('of many readings shows those nearest to a limit, and says so', () => {
    const ids = Array.from({ length: 300 }, (_, k) => `r${k}`);
    const root = readXml(drawLayerCheck(thickness(ids), US));
    expect(textsOf(root, 'point')).toHaveLength(60);
    expect(textsOf(root, 'point')).toContain('r0: 7 in OUT');
    expect(words(root).join(' ')).toContain(
      'Only the 60 readings nearest to a limit or out of it are drawn, of 301.',
    );
  });
});

describe('a straightedge', () => {
  const check = flatness();
  const root = readXml(drawStraightedge(check, US));
  const picture = pictureOf(root);

  test('names the gaps that do not pass, as the check prints them', () => {
    expect(words(root)).toContain('8: 13/16 in OUT');
    expect(words(root)).toContain('8 OUT: gap 13/16 in at station 7.00 ft, add 13/16 in');
    expect(words(root)).toContain('21 OUT: gap 1/2 in at station 20.00 ft, add 1/2 in');
    expect(formatLength(check.greatestGap, { as: 'in' })).toBe('13/16 in');
    expect(elementsOf(root, 'desc')[0]?.text).toContain(
      'Largest gap: 8, 13/16 in at station 7.00 ft.',
    );
  });

  test('takes the slope of the whole line out: a level base lies level', () => {
    const [surface] = styled(picture, 'polyline', 'finish');
    const heights = (surface?.attributes['points'] ?? '')
      .split(' ')
      .map((pair) => Number(pair.split(',')[1]));
    expect(heights).toHaveLength(31);
    const [level = 0] = heights;
    expect(heights.filter((y) => Math.abs(y - level) > 0.02)).toHaveLength(2);
    expect(Math.max(...heights)).toBe(heights[7]);
  });

  test('draws gaps and tolerance at one scale', () => {
    const [gap] = styled(picture, 'line', 'fall');
    const [tolerance] = styled(picture, 'line', 'old');
    const [bar] = styled(picture, 'polygon', 'stake');
    if (gap === undefined || tolerance === undefined || bar === undefined) expect.unreachable();
    const edge = Number((bar.attributes['points'] ?? '').split(/[ ,]/)[1]);
    const high = numberOf(gap, 'y2') - numberOf(gap, 'y1');
    expect((numberOf(tolerance, 'y1') - edge) / high).toBeCloseTo(3 / 8 / (13 / 16), 2);
  });

  test.each([
    [41, '1 more reading does not pass; the result lists it.'],
    [42, '2 more readings do not pass; the result lists them.'],
  ])('of %i that do not pass names 40 and counts the rest', (low, more) => {
    const check = checkFlatness({
      layer: 'base',
      tolerance: 'paver-guide-in',
      profile: Array.from({ length: 2 * low + 1 }, (_, k) => ({
        station: `${k} ft`,
        height: k % 2 === 0 ? '0 in' : '-1 in',
      })),
    });
    expect(words(readXml(drawStraightedge(check, US)))).toContain(more);
  });

  test('shows the largest gap where all pass, and says where there is none', () => {
    const passes = readXml(drawStraightedge(flatness({ 7: '1/4', 20: '1/8' }), US));
    expect(words(passes)).toContain('8: 1/4 in');
    expect(words(passes)).toContain('All readings are within tolerance.');
    const flat = readXml(drawStraightedge(flatness({}), US));
    expect(words(flat)).toContain('No gap anywhere.');
  });
});

describe('both', () => {
  test('have their texts apart and inside, and can be read by any reader of XML', () => {
    for (const draw of CHECK_DRAWINGS) {
      for (const style of [...STYLES, { system: 'us', narrow: true, width: 320 } as const]) {
        const svg = draw(style);
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toMatch(/<b>|[\u202a-\u202e]/);
        const read = new DOMParser({
          onError: (_level, message) => {
            throw new Error(message);
          },
        }).parseFromString(svg, 'image/svg+xml');
        expect(read.documentElement?.getAttribute('role')).toBe('img');
      }
    }
  });

  test.each([
    ['nothing', null],
    ['a copy without readings', { ...flatness(), readings: [] }],
    ['a reading without a verdict', { ...thickness(), readings: [{ id: 'a' }] }],
    ['a surface without stakes', { ...checkedSubgrade(), stakes: [] }],
  ])('refuse %s', (_what, value) => {
    expectFault(() => drawLayerCheck(value as never, US), 'WRONG_TYPE');
    expectFault(() => drawStraightedge(value as never, US), 'WRONG_TYPE');
  });

  test('refuse a gap that rests on a reading that is not there', () => {
    const check = flatness({ 7: '1/4' });
    const ends = check.readings.flatMap(({ between }) => between ?? []);
    const readings = check.readings.filter(({ station }) => ends[0]?.equals(station) !== true);
    expect(readings).toHaveLength(check.readings.length - 1);
    expectFault(() => drawStraightedge({ ...check, readings }, US), 'WRONG_TYPE');
  });

  test('refuse a gap that is between one reading', () => {
    const check = flatness();
    const readings = check.readings.map((one) => ({
      ...one,
      between: one.between?.slice(1) ?? null,
    }));
    expectFault(() => drawStraightedge({ ...check, readings } as never, US), 'WRONG_TYPE');
  });
});
