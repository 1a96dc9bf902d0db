import { describe, expect, test } from 'vitest';
import { drawSection } from 'settline/drawing';
import { planJob } from 'settline/job';
import { formatLength, length, type Length } from 'settline/units';
import { cedarCourtJob } from '../cedar-court.js';
import { heronYardJob } from '../heron-yard.js';
import { PLANS } from './drawn-plans.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf, type Element } from './read-svg.js';

const printed = (depth: Length, system: 'us' | 'metric'): string => {
  const as = system === 'us' ? 'in' : 'mm';
  return formatLength(depth, { as }).replace(` ${as}`, '');
};

/** Heights of the points of lines and figures of a style. */
const heightsOf = (root: Element, style: string): number[] =>
  ['line', 'polyline', 'polygon']
    .flatMap((name) => elementsOf(pictureOf(root), name))
    .filter(({ attributes }) => attributes['class'] === style)
    .flatMap((element) =>
      element.name === 'line'
        ? [numberOf(element, 'y1'), numberOf(element, 'y2')]
        : (element.attributes['points'] ?? '').split(' ').map((pair) => Number(pair.split(',')[1])),
    );

const cases = PLANS.flatMap((plan) =>
  plan.pavements.flatMap((pavement) =>
    (['us', 'metric'] as const).map((system) => ({
      name: `${plan.name}, ${pavement.id}, ${system}`,
      plan,
      pavement,
      system,
    })),
  ),
);

describe('the figures of a section are those of the plan', () => {
  test.each(cases)('$name', ({ plan, pavement, system }) => {
    const line = plan.stringLines.find((one) => one.pavement === pavement.id);
    const root = readXml(drawSection(plan, { system, pavement: pavement.id }));
    const surfaces = line?.surfaces.map(({ belowString }) => printed(belowString, system)) ?? [];
    expect(surfaces.length).toBeGreaterThan(3);
    expect(textsOf(root, 'depth')).toEqual(['0', ...surfaces]);
    const thickness = textsOf(root, 'thickness');
    expect(thickness).toHaveLength(pavement.buildUp.layers.length);
    const depths = [
      line?.surfaces[0],
      ...(line?.surfaces.filter(
        ({ surface }) => surface.endsWith(' top') && !surface.startsWith('lift'),
      ) ?? []),
      line?.surfaces.at(-1),
    ].map((one) =>
      length(
        `${printed(one?.belowString ?? length('0 m'), system)} ${system === 'us' ? 'in' : 'mm'}`,
      ),
    );
    const differences = depths
      .slice(1)
      .map((depth, k) => printed(depth.minus(depths[k] ?? depth), system));
    expect(thickness).toEqual(differences);
  });

  test.each(cases)('$name: heights are to scale', ({ plan, pavement, system }) => {
    const root = readXml(drawSection(plan, { system, pavement: pavement.id }));
    const line = plan.stringLines.find((one) => one.pavement === pavement.id);
    const [string = 0] = heightsOf(root, 'string');
    const [finish = 0] = heightsOf(root, 'finish');
    const subgrade = Math.max(...heightsOf(root, 'dig'));
    const share = (finish - string) / (subgrade - string);
    const height = line?.stringHeight.toNumber('m') ?? Number.NaN;
    expect(share).toBeCloseTo(height / (height + pavement.buildUp.total.toNumber('m')), 3);
    const [old = 0] = heightsOf(root, 'old');
    const scale = (subgrade - string) / (height + pavement.buildUp.total.toNumber('m'));
    expect((subgrade - old) / scale).toBeCloseTo(pavement.dig.depth.toNumber('m'), 3);
  });
});

const plan = planJob(cedarCourtJob());
const us = { system: 'us' } as const;

describe('a section', () => {
  const root = readXml(drawSection(plan, { ...us, pavement: 'court' }));

  test('hangs from the first string of its pavement, or from the one that is named', () => {
    expect(textsOf(root, 'string-name')).toEqual(['string KERB']);
    expect(textsOf(root, 'depth').slice(0, 2)).toEqual(['0', '18']);
    const other = readXml(drawSection(plan, { ...us, pavement: 'court', string: 'fence' }));
    expect(textsOf(other, 'string-name')).toEqual(['string FENCE']);
    expect(textsOf(other, 'depth').slice(0, 2)).toEqual(['0', '24']);
  });

  test('carries base and dig past the edge as far as the sheet marks them', () => {
    expect(textsOf(root, 'reach')).toEqual(['17 in', '20 in']);
  });

  test('tells the dig, the old paving and the soil below it', () => {
    expect(textsOf(root, 'figure')).toEqual(['dig 19 5/8 in', 'old paving 5 in', 'soil 14 5/8 in']);
    expect(elementsOf(root, 'desc')[0]?.text).toContain(
      'Dig, on average: 19 5/8 in. Old paving, averaged over the dig: 5 in. Soil to dig after stripping: 14 5/8 in.',
    );
  });

  test('draws base, dig, lifts and old paving in their places', () => {
    const picture = pictureOf(root);
    const across = (element: Element): number[] =>
      (element.attributes['points'] ?? '').split(' ').map((pair) => Number(pair.split(',')[0]));
    const figures = elementsOf(picture, 'polygon').filter(({ attributes }) =>
      (attributes['class'] ?? '').startsWith('area '),
    );
    const hatched = (hatch: string) =>
      figures.filter(({ attributes }) => attributes['class'] === `area ground-${hatch}`);
    const [paver, base, old] = ['paver', 'stone', 'old-paving'].map((hatch) => hatched(hatch)[0]);
    if (paver === undefined || base === undefined || old === undefined) expect.unreachable();
    const edge = Math.min(...across(paver));
    const scale = (edge - Math.min(...across(base))) / 17;
    const dig = elementsOf(picture, 'polyline').find(
      ({ attributes }) => attributes['class'] === 'dig',
    );
    expect(
      across(dig ?? base)
        .map((x) => ((edge - x) / scale).toFixed(1))
        .slice(0, 2),
    ).toEqual(['20.0', '20.0']);
    const heights = (element: Element): number[] =>
      (element.attributes['points'] ?? '').split(' ').map((pair) => Number(pair.split(',')[1]));
    const down = (Math.max(...heights(paver)) - Math.min(...heights(paver))) / 3.25;
    expect((Math.max(...heights(old)) - Math.min(...heights(old))) / down).toBeCloseTo(5, 1);
    const [finish = 0] = heightsOf(root, 'finish');
    const lifts = [...new Set(heightsOf(root, 'lift'))].map((y) => (y - finish) / down);
    expect(lifts).toHaveLength(2);
    expect(lifts[0]).toBeCloseTo(8.5, 1);
    expect(lifts[1]).toBeCloseTo(15.75, 1);
    expect(Math.max(...across(old))).toBeCloseTo(edge - 20 * scale, 1);
  });

  test('tapers the base off from the restraint where the job says so', () => {
    const job = cedarCourtJob();
    const tapered = planJob({
      ...job,
      pavements: job.pavements.map((one) => ({ ...one, taperedBase: true })),
    });
    const drawn = pictureOf(readXml(drawSection(tapered, { ...us, pavement: 'court' })));
    const restraint = elementsOf(drawn, 'rect').find(
      ({ attributes }) => attributes['class'] === 'stake',
    );
    const stone = elementsOf(drawn, 'polygon').filter(({ attributes }) =>
      / ground-(?:stone|sub-base)$/.test(attributes['class'] ?? ''),
    );
    const corners = stone.map((one) =>
      (one.attributes['points'] ?? '').split(' ').map((pair) => pair.split(',').map(Number)),
    );
    if (restraint === undefined) expect.unreachable();
    expect(corners[0]?.[0]?.[0]).toBeCloseTo(numberOf(restraint, 'x'), 1);
    expect(corners[1]?.[0]).toEqual(corners[0]?.[3]);
    const whole = pictureOf(root);
    const base = elementsOf(whole, 'polygon').find(({ attributes }) =>
      (attributes['class'] ?? '').endsWith(' ground-sub-base'),
    );
    const foot = (base?.attributes['points'] ?? '').split(' ')[3]?.split(',').map(Number);
    expect(corners[1]?.[3]?.[0]).toBeCloseTo(foot?.[0] ?? 0, 1);
  });

  test('slopes the side of the dig', () => {
    const heron = PLANS[3];
    if (heron === undefined) expect.unreachable();
    const drawn = readXml(drawSection(heron, { system: 'metric', pavement: 'drive' }));
    expect(textsOf(drawn, 'reach')).toEqual(['410 mm', '560 mm', '800 mm']);
    const dig = elementsOf(pictureOf(drawn), 'polyline').find(
      ({ attributes }) => attributes['class'] === 'dig',
    );
    const [top = 0, bottom = 0] = (dig?.attributes['points'] ?? '')
      .split(' ')
      .map((pair) => Number(pair.split(',')[0]));
    const [edge] = elementsOf(pictureOf(drawn), 'line')
      .filter(({ attributes }) => attributes['class'] === 'finish')
      .map((one) => numberOf(one, 'x1'));
    const plan = heron.pavements.find(({ id }) => id === 'drive')?.edges[5];
    const share = plan?.top.dividedBy(plan.dig).toNumber() ?? Number.NaN;
    expect(((edge ?? 0) - top) / ((edge ?? 0) - bottom)).toBeCloseTo(share, 2);
  });

  test('says how much taller it is drawn than wide', () => {
    const told = textsOf(root, 'note').find((note) => note.startsWith('Heights'));
    const factor = Number(/at ([\d.]+) times/.exec(told ?? '')?.[1] ?? 1);
    const lines = elementsOf(pictureOf(root), 'line').filter(
      ({ attributes }) => attributes['class'] === 'dimension',
    );
    const level = lines.filter((one) => numberOf(one, 'y1') === numberOf(one, 'y2'));
    const [base] = level.map((one) => Math.abs(numberOf(one, 'x2') - numberOf(one, 'x1')));
    const [string = 0] = heightsOf(root, 'string');
    const [finish = 0] = heightsOf(root, 'finish');
    expect((finish - string) / 18 / ((base ?? 0) / 17)).toBeCloseTo(factor, 1);
  });

  test('has its depths from finished grade where no string serves the pavement', () => {
    const job = heronYardJob();
    const bare = planJob({
      ...job,
      stringLines: job.stringLines.filter(({ pavement }) => pavement !== 'walk'),
    });
    const drawn = readXml(drawSection(bare, { system: 'metric', pavement: 'walk' }));
    expect(textsOf(drawn, 'depth')[0]).toBe('0');
    expect(textsOf(drawn, 'string-name')).toEqual([]);
    expect(textsOf(drawn, 'surface')[0]).toBe('finish');
    expect(textsOf(drawn, 'note').join(' ')).toContain('Depths run down from finished grade.');
  });
});
