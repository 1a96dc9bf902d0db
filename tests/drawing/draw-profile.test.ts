import { describe, expect, test } from 'vitest';
import { drawProfile } from 'settline/drawing';
import { planJob, type StringLinePlan } from 'settline/job';
import { formatLength, roundTo, length, type Length } from 'settline/units';
import { cedarCourtJob } from '../cedar-court.js';
import { slateWharfJob } from '../slate-wharf.js';
import { PLANS } from './drawn-plans.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf, type Element } from './read-svg.js';

type System = 'us' | 'metric';
const bare = (depth: Length, system: System): string => {
  const as = system === 'us' ? 'in' : 'mm';
  return formatLength(depth, { as }).replace(` ${as}`, '');
};
const long = (station: Length, system: System): string =>
  system === 'us'
    ? formatLength(station, { as: 'ft-in', nearest: '1/8 in' })
    : formatLength(station, { as: 'm' });
const level = (elevation: Length, system: System): string =>
  formatLength(elevation, { as: system === 'us' ? 'ft' : 'm' }).replace(/ \w+$/, '');
const onTape = (depth: Length, system: System): Length =>
  roundTo(depth, length(system === 'us' ? '1/16 in' : '1 mm'));

const cases = PLANS.flatMap((plan) =>
  plan.stringLines.flatMap((line) =>
    (['us', 'metric'] as const).map((system) => ({
      name: `${plan.name}, ${line.id}, ${system}`,
      plan,
      line,
      system,
    })),
  ),
);

const pointsOf = (element: Element | undefined): (readonly [number, number])[] =>
  (element?.attributes['points'] ?? '').split(' ').map((pair) => {
    const [x, y] = pair.split(',').map(Number);
    return [x ?? Number.NaN, y ?? Number.NaN] as const;
  });

const polylines = (root: Element, style: string): (readonly [number, number])[][] =>
  elementsOf(pictureOf(root), 'polyline')
    .filter(({ attributes }) => attributes['class'] === style)
    .map(pointsOf);

describe('the figures of a profile are those of the plan', () => {
  test.each(cases)('$name', ({ plan, line, system }) => {
    const root = readXml(drawProfile(plan, { system, string: line.id, width: 1200 }));
    const { stakes } = line;
    expect(textsOf(root, 'row-stake')).toEqual(stakes.map(({ id }) => id));
    expect(textsOf(root, 'row-station')).toEqual(
      stakes.map(({ station }) => long(station, system)),
    );
    const orDash = (read: (stake: StringLinePlan['stakes'][number]) => string | null) => {
      const cells = stakes.map(read);
      return cells.every((cell) => cell === null) ? [] : cells.map((cell) => cell ?? '-');
    };
    const levelOr = (value: Length | null) => (value === null ? null : level(value, system));
    expect(textsOf(root, 'row-finish-elevation')).toEqual(
      orDash((one) => levelOr(one.finishElevation)),
    );
    expect(textsOf(root, 'row-string-elevation')).toEqual(
      orDash((one) => levelOr(one.stringElevation)),
    );
    expect(textsOf(root, 'row-ground')).toEqual(
      orDash(({ ground }) => (ground === null ? null : bare(ground, system))),
    );
    const dig = ({ ground, subgrade }: StringLinePlan['stakes'][number]) =>
      ground === null ? null : bare(onTape(subgrade, system).minus(onTape(ground, system)), system);
    expect(textsOf(root, 'row-dig')).toEqual(orDash(dig));
    expect(textsOf(root, 'row-sag')).toHaveLength(line.sags.length);
  });

  test.each(cases)('$name: to scale', ({ plan, line, system }) => {
    const root = readXml(drawProfile(plan, { system, string: line.id, width: 1200 }));
    const [finish = []] = polylines(root, 'finish');
    const [subgrade = []] = polylines(root, 'dig');
    expect(finish).toHaveLength(line.stakes.length);
    const total = line.stakes[0]?.subgrade.minus(line.stringHeight).toNumber('m') ?? Number.NaN;
    const down = ((subgrade[0]?.[1] ?? 0) - (finish[0]?.[1] ?? 0)) / total;
    const first = line.stakes[0];
    const last = line.stakes.at(-1);
    const across =
      ((finish.at(-1)?.[0] ?? 0) - (finish[0]?.[0] ?? 0)) /
      (last?.station.minus(first?.station ?? last.station).toNumber('m') ?? Number.NaN);
    line.stakes.forEach(({ station, finishElevation }, index) => {
      const [x = 0, y = 0] = finish[index] ?? [];
      expect((x - (finish[0]?.[0] ?? 0)) / across).toBeCloseTo(
        station.toNumber('m') - (first?.station.toNumber('m') ?? 0),
        2,
      );
      const levels = line.stakes.every((one) => one.finishElevation !== null);
      const rise =
        levels && finishElevation !== null
          ? finishElevation.minus(first?.finishElevation ?? finishElevation).toNumber('m')
          : 0;
      expect(((finish[0]?.[1] ?? 0) - y) / down).toBeCloseTo(rise, 2);
    });
    const told = textsOf(root, 'note').join(' ');
    const factor = Number(/at ([\d.]+) times/.exec(told)?.[1] ?? 1);
    expect(down / across / factor).toBeCloseTo(1, 1);
  });
});

describe('a profile', () => {
  const job = cedarCourtJob();
  const plan = planJob(job);

  test('is drawn below a level string where elevations are not known at every stake', () => {
    const bare = planJob({
      ...job,
      stakes: job.stakes.map(({ id, x, y, ground }) => ({
        id,
        x,
        y,
        ...(ground === undefined ? {} : { ground }),
      })),
    });
    const root = readXml(drawProfile(bare, { system: 'us', string: 'kerb' }));
    expect(textsOf(root, 'note').join(' ')).toContain('Drawn below a level string');
    const [finish = []] = polylines(root, 'finish');
    expect(new Set(finish.map(([, y]) => y)).size).toBe(1);
    expect(textsOf(root, 'row-finish-elevation')).toEqual([]);
  });

  test('is drawn below a level string where one elevation is missing', () => {
    const partly = planJob({
      ...job,
      stakes: job.stakes.map(({ finish, ...stake }) =>
        stake.id === 'K2' || finish === undefined ? stake : { ...stake, finish },
      ),
    });
    const stakes = partly.stringLines.find(({ id }) => id === 'kerb')?.stakes ?? [];
    expect(stakes.filter(({ finishElevation }) => finishElevation === null)).toHaveLength(1);
    const root = readXml(drawProfile(partly, { system: 'us', string: 'kerb' }));
    expect(textsOf(root, 'note').join(' ')).toContain('Drawn below a level string');
    expect(textsOf(root, 'row-finish-elevation')[1]).toBe('-');
  });

  test('hangs the string by its sag', () => {
    const wharf = planJob({
      ...slateWharfJob(),
      string: { tension: '20 N', weightPerLength: '6 g/m' },
    });
    const line = wharf.stringLines[0];
    const root = readXml(
      drawProfile(wharf, { system: 'metric', string: line?.id ?? '', width: 2400 }),
    );
    const path =
      elementsOf(pictureOf(root), 'path').find(({ attributes }) => attributes['class'] === 'string')
        ?.attributes['d'] ?? '';
    const numbers = (path.match(/-?[\d.]+/g) ?? []).map(Number);
    const [, y0 = 0, , steer = 0, , y1 = 0] = numbers;
    const [finish = []] = polylines(root, 'finish');
    const height = ((finish[0]?.[1] ?? 0) - y0) / (line?.stringHeight.toNumber('m') ?? 1);
    const hang = (steer - (y0 + y1) / 2) / 2 / height;
    expect(hang).toBeCloseTo(line?.sags[0]?.sag.toNumber('m') ?? Number.NaN, 3);
    expect(hang).toBeGreaterThan(0.002);
    const printed = textsOf(root, 'row-sag');
    expect(printed).toEqual(line?.sags.map(({ sag }) => bare(sag, 'metric')));
  });

  test('hatches cut above the subgrade and fill below it, split where they meet', () => {
    const low = planJob({
      ...job,
      stakes: job.stakes.map((stake) =>
        stake.id === 'K1' ? { ...stake, ground: '42 in' } : stake,
      ),
    });
    const svg = drawProfile(low, { system: 'us', string: 'kerb' });
    const root = readXml(svg);
    expect(textsOf(root, 'row-dig')[0]).toMatch(/^-/);
    const areas = elementsOf(pictureOf(root), 'polygon').filter(({ attributes }) =>
      (attributes['class'] ?? '').startsWith('bare ground-'),
    );
    const fills = areas.filter(({ attributes }) => attributes['class'] === 'bare ground-fill');
    const cuts = areas.filter(({ attributes }) => attributes['class'] === 'bare ground-cut');
    expect(fills).toHaveLength(1);
    expect(pointsOf(fills[0])).toHaveLength(3);
    // one stretch of cut: ground from where they meet to the last stake, and the subgrade back
    const spans = (low.stringLines.find(({ id }) => id === 'kerb')?.stakes.length ?? 0) - 1;
    expect(cuts).toHaveLength(1);
    expect(pointsOf(cuts[0])).toHaveLength(1 + 2 * spans);
    const [fill, cut] = [pointsOf(fills[0]), pointsOf(cuts[0])];
    const start = Math.min(...fill.map(([x]) => x));
    const meet = Math.max(...fill.map(([x]) => x));
    expect(Math.min(...cut.map(([x]) => x))).toBe(meet);
    const stakes = low.stringLines.find(({ id }) => id === 'kerb')?.stakes ?? [];
    const [first = 0, second = 0] = stakes.map(({ dig }) => dig?.toNumber('in') ?? Number.NaN);
    const [, [next] = [Number.NaN]] = cut;
    const share = (meet - start) / (next - start);
    expect(share).toBeCloseTo(first / (first - second), 2);
    expect(elementsOf(root, 'desc')[0]?.text).toContain('At stake K1: fill 5 1/4 in.');
    expect(drawProfile(plan, { system: 'us', string: 'kerb' })).not.toContain('to fill');
  });

  test('names the stakes where no ground was measured', () => {
    const notes = textsOf(
      readXml(drawProfile(plan, { system: 'us', string: 'garden' })),
      'note',
    ).join(' ');
    expect(notes).toContain('No ground is measured from this string at G1, G2, G3.');
  });

  test('goes on in strips that share a stake where there are many', () => {
    const ids = Array.from({ length: 30 }, (_, k) => `K${k + 1}`);
    const many = planJob({
      ...job,
      stakes: [
        ...job.stakes.filter(({ id }) => !ids.includes(id)),
        ...ids.map((id, k) => ({ id, x: `${k * 3} ft`, y: '-3 ft', finish: '213 ft' })),
      ],
      stringLines: job.stringLines.map((line) =>
        line.id === 'kerb' ? { ...line, stakes: ids } : line,
      ),
    });
    const root = readXml(drawProfile(many, { system: 'us', string: 'kerb' }));
    const shown = textsOf(root, 'row-stake');
    expect([...new Set(shown)]).toEqual(ids);
    const strips = polylines(root, 'finish');
    expect(strips.length).toBeGreaterThan(2);
    expect(shown).toHaveLength(ids.length + strips.length - 1);
    const scales = strips.map((strip) => ((strip[1]?.[0] ?? 0) - (strip[0]?.[0] ?? 0)).toFixed(1));
    expect(new Set(scales).size).toBe(1);
    expect(numberOf(root, 'width')).toBe(720);
  });
});
