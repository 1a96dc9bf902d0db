import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawPlan } from 'settline/drawing';
import { planJob, renderJobSheet, type JobPlan } from 'settline/job';
import { formatLength, formatQuantity, roundTo, length, type Length } from 'settline/units';
import { heronYardFile, heronYardJob } from '../heron-yard.js';
import { expectFault } from '../faults.js';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { PLANS, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf, type Element } from './read-svg.js';

const SYSTEMS = ['us', 'metric'] as const;
type System = (typeof SYSTEMS)[number];
const long = (value: Length, system: System): string =>
  system === 'us'
    ? formatLength(value, { as: 'ft-in', nearest: '1/8 in' })
    : formatLength(value, { as: 'm' });
const drawn = (
  plan: JobPlan,
  options: Parameters<typeof drawPlan>[1] = { system: 'us' },
): Element => readXml(drawPlan(plan, options));
const wordsOf = (root: Element): string[] => elementsOf(root, 'text').map(({ text }) => text);

const cases = PLANS.flatMap((plan) =>
  SYSTEMS.map((system) => ({ name: `${plan.name}, ${system}`, plan, system })),
);

/** Corner points of closed figures of a style in the picture. */
const figuresOf = (root: Element, style: string): (readonly [number, number])[][] =>
  elementsOf(pictureOf(root), 'polygon')
    .filter(({ attributes }) => attributes['class'] === style)
    .map(({ attributes }) =>
      (attributes['points'] ?? '').split(' ').map((pair): readonly [number, number] => {
        const [x = Number.NaN, y = Number.NaN] = pair.split(',').map(Number);
        return [x, y];
      }),
    );

/** The one scale and shift that takes places to points, and how far off the worst point is. */
function fitOf(
  places: readonly { readonly x: Length; readonly y: Length }[],
  points: readonly (readonly [number, number])[],
): { readonly scale: number; readonly worst: number } {
  const at = places.map(({ x, y }) => [x.toNumber('m'), y.toNumber('m')] as const);
  const [[ax, ay] = [0, 0], [px, py] = [0, 0]] = [at[0], points[0]];
  const far = at.reduce((best, [x, y], k) => {
    const [bx, by] = at[best] ?? [ax, ay];
    return Math.hypot(x - ax, y - ay) > Math.hypot(bx - ax, by - ay) ? k : best;
  }, 0);
  const [[fx, fy] = [0, 0], [qx, qy] = [0, 0]] = [at[far], points[far]];
  const scale = Math.hypot(qx - px, qy - py) / Math.hypot(fx - ax, fy - ay);
  const off = at.map(([x, y], k) => {
    const [sx, sy] = points[k] ?? [Number.NaN, Number.NaN];
    return Math.hypot(sx - px - (x - ax) * scale, sy - py + (y - ay) * scale);
  });
  return { scale, worst: Math.max(...off) };
}

/** Pixels to a metre, by the dig of a pavement that is like no other figure. */
function scaleOf(root: Element, { digOutline }: JobPlan['pavements'][number] = none()): number {
  const fits = figuresOf(root, 'open dig')
    .filter((ring) => ring.length === digOutline.length)
    .map((ring) => fitOf(digOutline, ring))
    .sort((a, b) => a.worst - b.worst);
  expect(fits[0]?.worst).toBeLessThan(0.03);
  return fits[0]?.scale ?? Number.NaN;
}

const none = (): never => expect.unreachable('no pavement');

describe('a plan has the figures of the sheet', () => {
  test.each(cases)('$name', ({ plan, system }) => {
    const root = drawn(plan, { system });
    const sheet = renderJobSheet(plan, { system, width: 120 });
    const words = wordsOf(root).join('\n');
    const unit = system === 'us' ? 'in' : 'mm';
    const step = length(
      plan.name.startsWith('Heron') ? '10 mm' : system === 'us' ? '1/4 in' : '5 mm',
    );
    const setOut = (value: Length): string =>
      formatLength(roundTo(value, step, 'up'), { as: unit, rounding: 'up' }).replace(
        ` ${unit}`,
        '',
      );
    for (const pavement of plan.pavements) {
      for (const { edge, kind, length: along, base, dig, top } of pavement.edges) {
        const row = wordsOf(root).find(
          (text) =>
            new RegExp(`^${edge} \\([A-Z]+-[A-Z]+\\) ${kind ?? 'not said'}, `).test(text) &&
            text.includes(`, ${long(along, system)}: `),
        );
        expect(row).toBeDefined();
        const name = /^\d+ \([A-Z]+-[A-Z]+\)/.exec(row ?? '')?.[0] ?? 'no name';
        expect(sheet).toContain(`${name} ${kind ?? 'not said'}`);
        if (!top.equals(dig)) {
          expect(words).toContain(`base ${setOut(base)}, dig ${setOut(dig)}, top ${setOut(top)}`);
        } else if (dig.isZero()) expect(row).toContain('nothing past it');
        else if (base.equals(dig)) expect(row).toContain(`base and dig ${setOut(dig)}`);
        else expect(row).toContain(`base ${setOut(base)}, dig ${setOut(dig)}`);
      }
    }
    for (const text of textsOf(root, 'set-out')) {
      const [figure = ''] = /(?<=dig ).*/.exec(text) ?? [];
      const known = plan.pavements.flatMap(({ edges }) =>
        edges.map(({ dig }) => `${setOut(dig)} ${unit}`),
      );
      expect(known).toContain(figure);
    }
  });

  test.each(cases)('$name: lengths in the picture', ({ plan, system }) => {
    const names = textsOf(drawn(plan, { system }), 'edge-name');
    const lengths = plan.pavements.flatMap(({ edges }) =>
      edges.map(({ edge, length: along }) => `${edge} ${long(along, system)}`),
    );
    expect(names.length).toBeGreaterThan(4);
    for (const text of names.filter((one) => !one.endsWith(')'))) {
      expect(lengths).toContain(text.replace(/ \([A-Z]+-[A-Z]+\)/, ''));
    }
  });

  test.each(cases)('$name: falls, stakes and lines', ({ plan, system }) => {
    const root = drawn(plan, { system });
    const words = wordsOf(root);
    const sheet = renderJobSheet(plan, { system, width: 120 });
    const falls = words.filter((text) => /^\d+\.\d%$/.test(text));
    expect(falls.length).toBeGreaterThan(0);
    for (const fall of falls) expect(sheet).toContain(fall);
    const offs = plan.stringLines.flatMap(({ stakes }) =>
      stakes.flatMap(({ id, offset, inTolerance }) => {
        const unit = system === 'us' ? 'in' : 'mm';
        const figure = formatLength(offset.abs(), { as: unit, rounding: 'half-even' });
        const side = offset.isNegative() ? 'right' : 'left';
        if (figure === `0 ${unit}` && inTolerance) return [];
        return [`${id}: ${figure} ${side}${inTolerance ? '' : ' OUT'}`];
      }),
    );
    for (const off of offs) expect(words).toContain(off);
    const ids = plan.stringLines.flatMap(({ stakes }) => stakes.map(({ id }) => id));
    for (const id of ids)
      expect(words.some((text) => text === id || text.startsWith(`${id}: `))).toBe(true);
  });
});

describe('a plan has the shape of the site', () => {
  test.each(PLANS.map((plan) => ({ name: plan.name, plan })))('$name', ({ plan }) => {
    const root = drawn(plan);
    const digs = figuresOf(root, 'open dig');
    expect(digs.length).toBe(
      plan.pavements.reduce((sum, { digHoles }) => sum + 1 + digHoles.length, 0),
    );
    const straight = plan.pavements.filter(
      ({ digArcs, digHoles }) => digArcs.length + digHoles.length === 0,
    );
    for (const { digOutline } of straight) {
      const fits = digs
        .filter((ring) => ring.length === digOutline.length)
        .map((ring) => fitOf(digOutline, ring));
      expect(Math.min(...fits.map(({ worst }) => worst))).toBeLessThan(0.03);
    }
  });

  test('corners have their letters, each near its corner', () => {
    const [plan] = PLANS;
    if (plan === undefined) expect.unreachable();
    const root = drawn(plan);
    const letters = elementsOf(root, 'text').filter(
      ({ attributes }) => attributes['class'] === 'strong corner',
    );
    const corners = figuresOf(root, 'open finish').flat();
    expect(letters.map(({ text }) => text)).toEqual([
      'A',
      'B',
      'C',
      'D',
      'E',
      'F',
      'A',
      'B',
      'C',
      'D',
    ]);
    letters.forEach((letter, k) => {
      const [x, y] = corners[k] ?? [0, 0];
      expect(Math.hypot(numberOf(letter, 'x') - x, numberOf(letter, 'y') - y)).toBeLessThan(30);
    });
  });

  test('a stake off its line stands off it by the factor that the notes give', () => {
    const [plan] = PLANS;
    if (plan === undefined) expect.unreachable();
    const root = drawn(plan);
    const factor = Number(/drawn ([\d.]+) times/.exec(wordsOf(root).join(' '))?.[1]);
    const scale = scaleOf(root, plan.pavements[0]);
    const out = elementsOf(root, 'rect').filter(
      ({ attributes }) => attributes['class'] === 'stake solid',
    );
    const string = elementsOf(pictureOf(root), 'line').find(
      ({ attributes }) => attributes['class'] === 'string',
    );
    const offset = plan.stringLines[0]?.stakes[1]?.offset.toNumber('m') ?? 0;
    expect(out).toHaveLength(1);
    if (out[0] === undefined || string === undefined) expect.unreachable();
    // the string runs along x: left of it is up
    const off = numberOf(string, 'y1') - numberOf(out[0], 'y') - 4;
    expect(off).toBeCloseTo(offset * scale * factor, 1);
    expect(factor).toBeGreaterThan(1);
  });
});

describe('arrows point down the fall', () => {
  const arrowsOf = (plan: JobPlan) =>
    elementsOf(pictureOf(drawn(plan)), 'line')
      .filter(({ attributes }) => attributes['class'] === 'fall')
      .map((one) => [
        numberOf(one, 'x2') - numberOf(one, 'x1'),
        numberOf(one, 'y2') - numberOf(one, 'y1'),
      ]);

  test('between the stakes of strings', () => {
    const [plan] = PLANS;
    if (plan === undefined) expect.unreachable();
    // finished grade falls along kerb and fence, and rises along garden, which runs up the picture
    expect(plan.stringLines.map(({ slopes }) => slopes[0]?.slope.isNegative())).toEqual([
      true,
      true,
      false,
    ]);
    const [kerb = [], fence = [], garden = []] = arrowsOf(plan);
    for (const [dx = 0, dy = 0] of [kerb, fence]) {
      expect(dx).toBeGreaterThan(40);
      expect(Math.abs(dy)).toBeLessThan(1);
    }
    expect(garden[1]).toBeGreaterThan(40);
  });

  test('of a plane, by its azimuth', () => {
    const plan = planJob(heronYardJob());
    const arrows = arrowsOf(plan);
    expect(arrows).toHaveLength(2);
    plan.pavements.forEach(({ grade }, k) => {
      const turn = grade?.downhillAzimuth?.toNumber('rad') ?? Number.NaN;
      const [dx = 0, dy = 0] = arrows[k] ?? [];
      const long = Math.hypot(dx, dy);
      expect(dx / long).toBeCloseTo(Math.sin(turn), 2);
      expect(-dy / long).toBeCloseTo(Math.cos(turn), 2);
    });
  });
});

describe('marked lines', () => {
  const plan = planJob(heronYardJob());

  test('are plain with their ids where nobody says what they are', () => {
    const svg = drawPlan(plan, { system: 'metric', theme: 'screen' });
    expect(wordsOf(readXml(svg))).toContain('water, marked line');
    expect(svg).not.toContain('class="marked marked-');
  });

  test('have their colour, and the words for it, where it is told', () => {
    const lineColours = [{ line: 'water', colour: 'blue' as const }];
    const screen = drawPlan(plan, { system: 'metric', theme: 'screen', lineColours });
    expect(wordsOf(readXml(screen))).toContain('water: blue, potable water');
    expect(screen).toContain('class="marked marked-blue"');
    const print = drawPlan(plan, { system: 'metric', lineColours });
    expect(wordsOf(readXml(print))).toContain('water: blue, potable water');
    expect(print).not.toContain('marked-blue');
  });

  test('colours of unknown lines and unknown colours are refused', () => {
    const wrong = (lineColours: unknown) => () =>
      drawPlan(plan, { system: 'us', lineColours } as never);
    expect(expectFault(wrong([{ line: 'gas', colour: 'red' }]), 'UNKNOWN_ID').path).toEqual([
      'lineColours',
      0,
      'line',
    ]);
    expectFault(wrong([{ line: 'water', colour: 'teal' }]), 'UNKNOWN_CHOICE');
    expectFault(wrong([{ line: 'water' }]), 'REQUIRED');
  });

  test('their zones are as wide as the job has them', () => {
    const root = drawn(plan, { system: 'metric' });
    const zone = figuresOf(root, 'open dimension')[0] ?? [];
    const xs = zone.map(([x]) => x);
    const scale = scaleOf(root, plan.pavements[1]);
    expect((Math.max(...xs) - Math.min(...xs)) / scale).toBeCloseTo(2 * 0.5 + 0.032, 2);
  });
});

describe('trees', () => {
  test('have the root zone of the sheet', () => {
    const plan = planJob(heronYardJob());
    const root = drawn(plan, { system: 'metric' });
    expect(wordsOf(root)).toContain('pear, zone 0.630 m');
    const [zone] = elementsOf(pictureOf(root), 'polyline').filter(
      ({ attributes }) => attributes['class'] === 'root-zone',
    );
    const xs = (zone?.attributes['points'] ?? '')
      .split(' ')
      .map((pair) => Number(pair.split(',')[0]));
    const scale = scaleOf(root, plan.pavements[1]);
    expect((Math.max(...xs) - Math.min(...xs)) / scale).toBeCloseTo(1.26, 2);
  });

  test('with a long name have their zone too', () => {
    const job = heronYardFile();
    const trees = job['trees'] as Record<string, unknown>[];
    job['trees'] = trees.map((tree) => ({ ...tree, id: 'the old pear tree by the yard gate' }));
    const root = drawn(planJob(job as never), { system: 'metric' });
    expect(wordsOf(root).join(' ')).toMatch(/the old pear\S*.*…, zone 0\.630 m/);
  });
});

describe('the legend of a plan', () => {
  const legendOf = (root: Element): string =>
    elementsOf(root, 'g')
      .filter(({ attributes }) => attributes['class'] === 'legend')
      .flatMap((group) => wordsOf(group))
      .join(' ');
  const plan = planJob(heronYardJob());

  test('names what the picture has', () => {
    const words = legendOf(drawn(plan));
    for (const name of ['old paving', 'slab', 'root zone of a tree', 'marked line', 'building']) {
      expect(words).toContain(name);
    }
  });

  test('does not name what lies outside the picture', () => {
    const words = legendOf(drawn(plan, { system: 'us', pavement: 'walk' }));
    expect(words).toContain('building');
    expect(words).not.toMatch(/slab|root zone/);
  });
});

describe('the layout of a plan', () => {
  test.each(PLANS.map((plan) => ({ name: plan.name, plan })))('$name', ({ plan }) => {
    for (const style of STYLES) expect(layoutFaults(drawPlan(plan, style))).toEqual([]);
  });

  test('of made-up sites', () => {
    fc.assert(
      fc.property(site, fc.constantFrom(...SYSTEMS), (of, system) => {
        const plan = planJob(jobOf(of, system));
        for (const style of STYLES) expect(layoutFaults(drawPlan(plan, style))).toEqual([]);
      }),
      runs(60),
    );
  });

  test('hostile names stay text and inside', () => {
    const hostile = ['<b>&"\'</b>', '\u05d0\u05d1\u05d2 12', 'W'.repeat(60), '\u202eabc'];
    for (const name of hostile) {
      const job = heronYardFile();
      job['name'] = name;
      for (const pavement of job.pavements) pavement['name'] = name;
      const plan = planJob(job as never);
      for (const style of STYLES) {
        const svg = drawPlan(plan, style);
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toContain('<b>');
        expect(svg).not.toContain('\u202e');
      }
      expect(elementsOf(drawn(plan), 'title')[0]?.text).toContain(
        name.replace('\u202e', '').slice(0, 3),
      );
    }
  });

  test('what has no place in the picture is told below it', () => {
    const job = heronYardFile();
    job['utilities'] = Array.from({ length: 20 }, (_, k) => ({
      id: `line number ${k}`,
      path: [
        { x: '2 m', y: '5 m' },
        { x: '2 m', y: '5.1 m' },
      ],
      width: '32 mm',
      tolerance: '100 mm',
    }));
    const words = wordsOf(drawn(planJob(job as never), { system: 'us', narrow: true })).join(' ');
    for (let k = 0; k < 20; k += 1) expect(words).toContain(`line number ${k}`);
    expect(words).toContain('No room in the picture for: ');
  });
});

test('of many stakes the ends and those out of line are named, the rest is counted', () => {
  const job = heronYardFile();
  const many = Array.from({ length: 100 }, (_, k) => ({
    id: `Q${k}`,
    x: '-1.2 m',
    y: `${k * 140} mm`,
  }));
  const out = { id: 'OFF', x: '-1.23 m', y: '13.95 m' };
  const last = { id: 'LAST', x: '-1.2 m', y: '14 m' };
  job.stakes.push(...many, out, last);
  const [west] = job.stringLines;
  if (west === undefined) expect.unreachable();
  west.stakes = [...many, out, last].map(({ id }) => id);
  const plan = planJob(job as never);
  const words = wordsOf(drawn(plan, { system: 'metric' }));
  expect(words).toContain('Q0');
  expect(words).toContain('LAST');
  expect(words).toContain('OFF: 30 mm left OUT');
  expect(words).not.toContain('Q50');
  // the others, and E2 and S2, which are no ends
  expect(words.join(' ')).toContain('Stakes drawn without ids: 101. The sheet lists them.');
});

describe('a plan says in words', () => {
  test('areas and edges to who cannot see it', () => {
    const [plan] = PLANS;
    if (plan === undefined) expect.unreachable();
    const desc = elementsOf(drawn(plan), 'desc')[0]?.text ?? '';
    const area = formatQuantity(
      plan.pavements[0]?.areas.paving ?? length('1 m').times(length('1 m')),
      { as: 'ft2', places: 1 },
    );
    expect(desc).toContain(area.replace('ft2', 'sq ft'));
    expect(desc).toContain('Edge 1 (A-B) restraint, 44\' 0"');
  });

  test('that lines must be located before the dig', () => {
    const words = wordsOf(drawn(planJob(heronYardJob()))).join(' ');
    expect(words).toContain('Have buried lines located and marked before you dig.');
    expect(words).toMatch(/Have them located before you dig, and dig by hand/);
    expect(words).toContain('The job does not say which way is north.');
  });
});

test('what is no plan and options that are none are refused', () => {
  const [plan] = PLANS;
  if (plan === undefined) expect.unreachable();
  expectFault(() => drawPlan({ ...plan }, { system: 'us' }), 'PLAN_INVALID');
  expectFault(() => drawPlan(plan, { system: 'feet' } as never), 'UNKNOWN_CHOICE');
  expectFault(() => drawPlan(plan, { system: 'us', width: 400 }), 'OUT_OF_RANGE');
  expectFault(() => drawPlan(plan, { system: 'us', north: true } as never), 'UNKNOWN_FIELD');
});
