import { DOMParser, type Element } from '@xmldom/xmldom';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  drawDig,
  drawPlan,
  drawProfile,
  drawSection,
  drawStakeRow,
  drawSteps,
} from 'settline/drawing';
import { planJob, renderJobSheet, workSteps, type JobPlan, type SheetSystem } from 'settline/job';
import { length, type Length } from 'settline/units';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { PLANS } from './drawn-plans.js';

const SYSTEMS = ['us', 'metric'] as const;

/** The elements of a drawing, read by a parser that has nothing to do with what wrote it. */
function read(svg: string): (name: string, style?: string) => Element[] {
  const faults: string[] = [];
  const document = new DOMParser({ onError: (_, message) => faults.push(message) }).parseFromString(
    svg,
    'image/svg+xml',
  );
  expect(faults).toEqual([]);
  const picture = [...document.getElementsByTagName('g')].find(
    (one) => one.getAttribute('class') === 'picture',
  );
  const all = picture ?? expect.unreachable('no picture');
  return (name, style) =>
    [...all.getElementsByTagName(name)].filter(
      (one) => style === undefined || (one.getAttribute('class') ?? '').split(' ').includes(style),
    );
}

const words = (elements: readonly Element[]): string[] =>
  elements.map(({ textContent }) => textContent ?? '');
const number = (element: Element, key: string): number => Number(element.getAttribute(key) ?? 'no');
const spanOf = (line: Element): number =>
  Math.hypot(number(line, 'x2') - number(line, 'x1'), number(line, 'y2') - number(line, 'y1'));

/** A printed length in metres: 5.400 m, 410 mm, 44' 0", 19 5/8 in. */
const metres = (text: string): number => length(text).toNumber('m');

/** Pixels to a metre by the scale bar: its line runs from end stroke to end stroke. */
function scaleOf(of: ReturnType<typeof read>): number {
  const [text = ''] = words(of('text', 'scale'));
  const bars = of('line', 'edge').filter((one) => number(one, 'y1') === number(one, 'y2'));
  const bar = bars.at(-1) ?? expect.unreachable('no scale bar');
  return spanOf(bar) / metres(/^[\d ./]+ (?:mm|m|in|ft)/.exec(text)?.[0] ?? text);
}

/** Lengths of the dimension lines that lie along a direction of the picture, in pixels. */
const dimensions = (of: ReturnType<typeof read>): number[] => of('line', 'dimension').map(spanOf);

/** Coordinates have two places: two ends and the bar are off by a little. */
const NEAR = 0.03;
const hasSpan = (spans: readonly number[], pixels: number, bar = 1): boolean =>
  spans.some((span) => Math.abs(span - pixels) <= NEAR + pixels * 0.0004 * bar);

const wordsIn = (text: string): string => text.replace(/\s+/g, ' ');

function checkPlan(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  const of = read(drawPlan(plan, { system }));
  const scale = scaleOf(of);
  const spans = dimensions(of);
  const texts = words(of('text', 'edge-name')).flatMap((text) => {
    const [, name, value] = /^(\d+ \(\S+\)) (.+)$/.exec(text) ?? [];
    return name === undefined || value === undefined ? [] : [{ name, value }];
  });
  for (const { name, value } of texts) {
    expect(sheet).toContain(`${name} `);
    expect(sheet).toContain(value);
  }
  const step = system === 'us' ? 0.0254 / 16 : 0.0005;
  for (const { value } of texts) expect(printedAs(plan, metres(value), step), value).toBe(true);
  for (const long of straightEdges(plan)) {
    const pixels = long.toNumber('m') * scale;
    if (pixels >= 35) expect(hasSpan(spans, pixels), `${long.toNumber('m')} m`).toBe(true);
  }
}

/** Edges that have a dimension line: straight ones round the outside, without other paving beside them. */
const straightEdges = ({ pavements, job }: JobPlan): Length[] =>
  pavements.flatMap(({ edges }, index) => {
    const outline = job.pavements[index]?.outline;
    const outer = Array.isArray(outline) ? { points: outline } : outline;
    if (outer === undefined || !('points' in outer)) expect.unreachable('no outline');
    const arcs = new Set(('arcs' in outer ? (outer.arcs ?? []) : []).map(({ edge }) => edge));
    return edges
      .slice(0, outer.points.length)
      .filter(({ edge, kind }) => kind !== 'adjoining' && !arcs.has(edge))
      .map(({ length: long }) => long);
  });

/** True where an edge of the plan prints as this. */
const printedAs = (plan: JobPlan, value: number, step: number): boolean =>
  plan.pavements.some(({ edges }) =>
    edges.some((edge) => Math.abs(edge.length.toNumber('m') - value) <= step * 1.001),
  );

function checkSection(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  for (const { id } of plan.pavements) {
    const of = read(drawSection(plan, { system, pavement: id }));
    const scale = scaleOf(of);
    for (const style of ['depth', 'thickness']) {
      const figures = words(of('text', style)).filter((text) => /\d/.test(text) && text !== '0');
      expect(figures.length).toBeGreaterThan(0);
      for (const figure of figures) expect(sheet, `${id} ${style}`).toContain(figure);
    }
    for (const reach of words(of('text', 'reach'))) {
      // rounded up to the step of set-outs: the line has the exact distance
      const spans = dimensions(of).map((span) => span / scale);
      const value = metres(reach);
      const most = plan.pavements.flatMap(({ edges }) =>
        edges.flatMap(({ base, dig, top }) => [base, dig, top]),
      );
      const exact = most.filter(
        (one) => value - one.toNumber('m') < 0.0101 && value > one.toNumber('m') - 1e-9,
      );
      expect(
        exact.some((one) => spans.some((span) => Math.abs(span - one.toNumber('m')) < 0.3 / scale)),
        `${id} ${reach}`,
      ).toBe(true);
    }
  }
}

function checkProfile(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  for (const { id, stakes } of plan.stringLines) {
    const of = read(drawProfile(plan, { system, string: id, width: 1200 }));
    const rows = of('g').filter((one) => (one.getAttribute('class') ?? '').includes('row-'));
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) {
      const cells = words([...row.getElementsByTagName('text')]).filter((text) => /\d/.test(text));
      for (const cell of cells) {
        if (/ row-stake$|^row-sag$/.test(row.getAttribute('class') ?? '')) continue;
        expect(sheet, `${id} ${row.getAttribute('class')}`).toContain(cell);
      }
    }
    checkStations(of, stakes);
  }
}

/** Each stake stands at its station over the stated scale. */
function checkStations(
  of: ReturnType<typeof read>,
  stakes: readonly { readonly station: Length }[],
): void {
  const [finish] = of('polyline', 'finish');
  const xs = (finish?.getAttribute('points') ?? '')
    .split(' ')
    .map((pair) => Number.parseFloat(pair));
  const stations = stakes.map(({ station }) => station.toNumber('m')).sort((a, b) => a - b);
  const scale = scaleOf(of);
  xs.forEach((x, k) => {
    const along = (x - (xs[0] ?? 0)) / scale;
    expect(Math.abs(along - ((stations[k] ?? 0) - (stations[0] ?? 0))) * scale).toBeLessThan(0.3);
  });
}

function checkDig(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  for (const { id, earth } of plan.pavements) {
    const svg = drawDig(plan, { system, pavement: id });
    const of = read(svg);
    expect(scaleOf(of)).toBeGreaterThan(0);
    const deepest = words(of('text')).find((text) => text.startsWith('deepest dig '));
    // none where one depth holds, or where all of it is fill
    if (earth.cutArea === null) expect(deepest).toBeUndefined();
    if (deepest !== undefined) expect(sheet).toContain(deepest);
    // where one depth holds: the digs at the stakes
    const digs = words(of('text')).flatMap((text) => /^\S+: (-?\d.*)$/.exec(text)?.slice(1) ?? []);
    for (const figure of digs) expect(sheet, id).toContain(` ${figure} `);
  }
}

/** What the stakes of a row are off their line, where the sheet lists them. */
function checkRow(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  for (const line of plan.stringLines) {
    const of = read(drawStakeRow(line, { system }));
    const rows = words(of('text')).flatMap((text) => {
      const [, off] = / at .+: (.+?)(?: OUT)?$/.exec(text) ?? [];
      return off === undefined ? [] : [off];
    });
    expect(rows).toHaveLength(line.stakes.length);
    if (line.ok !== false) continue;
    for (const off of rows.filter((one) => one !== 'on the line')) {
      expect(sheet, line.id).toContain(off.replace(/ (?:in|mm) /, ' '));
    }
  }
}

/** The numbers and names of the steps, and who signs what. */
function checkSteps(plan: JobPlan, system: SheetSystem): void {
  const sheet = wordsIn(renderJobSheet(plan, { system, width: 120 }));
  const of = read(drawSteps(workSteps(plan), { system }));
  const steps = words(of('text', 'step')).join(' ');
  const titles = steps.split(/ (?=\d+\. )/);
  expect(titles).toHaveLength(workSteps(plan).length);
  for (const title of titles) expect(sheet).toContain(title);
  const holds = words(of('text', 'hold'))
    .join(' ')
    .split(/ ?HOLD: /)
    .slice(1);
  expect(holds.length).toBeGreaterThan(0);
  for (const hold of holds) {
    const [, who, note] = /^(.+?) signs\. (.+)$/.exec(hold) ?? [];
    expect(sheet).toContain(`Sign (${who}): ${note}`);
  }
}

const cases = PLANS.flatMap((plan) =>
  SYSTEMS.map((system) => ({ name: `${plan.name}, ${system}`, plan, system })),
);

describe.each(cases)(
  '$name: dimensions are those of the sheet, and to scale',
  ({ plan, system }) => {
    test('drawPlan', () => {
      checkPlan(plan, system);
    });
    test('drawSection', () => {
      checkSection(plan, system);
    });
    test('drawProfile', () => {
      checkProfile(plan, system);
    });
    test('drawDig', () => {
      checkDig(plan, system);
    });
    test('drawStakeRow', () => {
      checkRow(plan, system);
    });
    test('drawSteps', () => {
      checkSteps(plan, system);
    });
  },
);

test('random plans: dimensions are those of the sheet, and to scale', () => {
  fc.assert(
    fc.property(site, fc.constantFrom(...SYSTEMS), (made, system) => {
      const plan = planJob(jobOf(made, system));
      checkPlan(plan, system);
      checkSection(plan, system);
      checkProfile(plan, system);
      checkDig(plan, system);
      checkRow(plan, system);
      checkSteps(plan, system);
    }),
    runs(20),
  );
});
