// Old paving is stripped first, where it lies; then soil is cut and low ground filled.
import { describe, expect, test } from 'vitest';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import type { Loose } from '../loose-job.js';
import { planFile } from '../plan-file.js';

// The dig: x from -0.5 to 10.5, y from -0.5 to 4.5, 55 m2 and 0.4 m deep. The base: 10.6 by 4.6 m.
const drive = (fields: Loose = {}) =>
  pavementOn(rectangle(0, 0, 10, 4), { id: 'drive', ...fields });
const withOld = (oldPaving: readonly Loose[], fields: Loose = {}, court: Loose = {}) =>
  planFile(levelSite([drive(court)], { oldPaving, ...fields }));
const driveOf = (...given: Parameters<typeof withOld>) =>
  withOld(...given).pavements[0] ?? expect.unreachable();
const at = (
  [west, south, east, north]: readonly [number, number, number, number],
  fields: Loose = {},
) => ({
  material: 'asphalt',
  thickness: '0.1 m',
  outline: { unit: 'm', points: rectangle(west, south, east, north) },
  ...fields,
});
const m3 = (volume: { to: (unit: 'm3') => { toString: () => string } }) =>
  volume.to('m3').toString();

// in the dig: x from 5 to 10.5, y from -0.5 to 2, 13.75 m2
const PARTLY = [5, -2, 20, 2] as const;

describe('old paving by its outline', () => {
  test('partly in the dig: that part alone', () => {
    const { oldPaving, earth, dig, spoil } = driveOf([at(PARTLY)]);
    expect(oldPaving.map(({ area }) => area.to('m2').toString())).toEqual(['13.75']);
    expect(oldPaving.map(({ inPlace }) => m3(inPlace))).toEqual(['1.375']);
    // 55 x 0.4 less 1.375
    expect(m3(earth.cut.volume)).toBe('20.625');
    expect(m3(earth.stripped)).toBe('1.375');
    expect(earth.fill.volume.isZero()).toBe(true);
    expect(spoil.bank).toEqual(earth.cut);
    // 1.375 over 55 m2 are 25 mm
    expect(dig.depth.to('mm').toString()).toBe('400');
    expect(dig.soil.to('mm').toString()).toBe('375');
  });

  test('larger than the dig: no more than the dig', () => {
    const { oldPaving, earth } = driveOf([at([-5, -5, 20, 20])]);
    expect(oldPaving[0]?.area.to('m2').toString()).toBe('55');
    expect(m3(earth.cut.volume)).toBe('16.5'); // 55 x 0.3
  });

  test('beside the dig: none', () => {
    const plan = withOld([at([12, 0, 20, 4])]);
    expect(plan.pavements[0]?.oldPaving).toEqual([]);
    expect(plan.totals.oldPaving).toEqual([]);
    expect(plan.totals.spoil?.bank.to('m3').toString()).toBe('22');
  });

  test('round an island and along an arc', () => {
    const outline = {
      unit: 'm',
      points: rectangle(2, 0, 6, 4),
      // half a disc of 2 m on its east side, and a plot of a square metre left out
      arcs: [{ edge: 2, bulgeMiddleOrdinate: 2 }],
      holes: [rectangle(3, 1, 4, 2)],
    };
    const { oldPaving, earth } = driveOf([at(PARTLY, { outline })]);
    const area = 16 + 2 * Math.PI - 1;
    expect(oldPaving[0]?.area.toNumber('m2')).toBeCloseTo(area, 9);
    expect(earth.cut.volume.toNumber('m3')).toBeCloseTo(22 - area / 10, 9);
  });

  test('weighs what its material weighs, or what the job says', () => {
    const mass = (fields: Loose) => driveOf([at(PARTLY, fields)]).oldPaving[0]?.mass.to('t');
    expect(mass({ density: '2.2 t/m3' })?.toString()).toBe('3.025'); // 1.375 x 2.2
    // 4050 lb/yd3 of concrete in place
    const pounds = driveOf([at(PARTLY, { material: 'concrete' })]).oldPaving[0]?.mass;
    expect(pounds?.toNumber('lb')).toBeCloseTo((1.375 / 0.9144 ** 3) * 4050, 6);
  });

  test('in two digs that share a strip: once', () => {
    const south = pavementOn(rectangle(0, 0, 10, 4), { id: 'south' });
    const north = pavementOn(rectangle(0, 4.6, 10, 8), { id: 'north' });
    const plan = planFile(
      levelSite([south, north], { oldPaving: [at([2, 3, 4, 6], { density: '2 t/m3' })] }),
    );
    // 2 m wide from y = 3 to 6; the digs meet from 4.1 to 4.5, which counts with the first by id, north
    const areas = plan.pavements.map(({ oldPaving }) => oldPaving[0]?.area.toNumber('m2'));
    expect(areas.map((area) => area?.toFixed(9))).toEqual(['2.200000000', '3.800000000']);
    expect(plan.totals.oldPaving.map(({ mass }) => mass.to('t').toString())).toEqual(['1.2']);
    expect(plan.totals.oldPaving).toHaveLength(1);
  });
});

describe('old paving that lies on old paving', () => {
  const asphalt = at([5, -2, 8, 2], { thickness: '60 mm' });
  const concrete = at(PARTLY, { material: 'concrete', thickness: '120 mm' });

  test('is stripped layer by layer', () => {
    const plan = withOld([asphalt, concrete]);
    const [first] = plan.pavements;
    // 3 x 2.5 m of asphalt on a part of the concrete
    expect(first?.oldPaving.map(({ inPlace }) => m3(inPlace))).toEqual(['0.45', '1.65']);
    expect(first && m3(first.earth.cut.volume)).toBe('19.9'); // 22 - 0.45 - 1.65
    expect(plan.totals.oldPaving.map(({ material }) => material)).toEqual(['asphalt', 'concrete']);
  });

  test('whichever is listed first', () => {
    const [one, other] = [driveOf([asphalt, concrete]), driveOf([concrete, asphalt])];
    expect(other.earth).toEqual(one.earth);
    expect(other.dig).toEqual(one.dig);
  });

  test('together thicker than the dig: filled under both alone', () => {
    const old = [
      { ...asphalt, thickness: '300 mm' },
      { ...concrete, thickness: '250 mm' },
    ];
    const { earth, dig } = driveOf(old);
    // under both 0.15 m is missing on 7.5 m2
    expect(m3(earth.fill.volume)).toBe('1.125');
    // on average soil is left to dig, so that nothing but the fill shows the low ground
    expect(dig.soil.isNegative()).toBe(false);
    const low = withOld(old).warnings.filter(({ code }) => code === 'FILL_UNDER_OLD_PAVING');
    expect(low.map(({ values }) => String(values['fill']))).toEqual(['1.125 m3']);
    // 55 - 13.75 m2 bare, 0.4 m; 13.75 - 7.5 m2 under concrete, 0.15 m
    expect(m3(earth.cut.volume)).toBe('17.4375');
  });

  test('two materials of two densities travel by themselves', () => {
    const { totals } = withOld([
      at([0, 0, 1, 1], { density: '2.1 t/m3' }),
      at([1, 0, 2, 1], { density: '2.3 t/m3' }),
      at([2, 0, 3, 1], { density: '2.1 t/m3' }),
    ]);
    expect(totals.oldPaving.map(({ mass }) => mass.to('t').toString())).toEqual(['0.42', '0.23']);
  });
});

describe('old paving thicker than the dig', () => {
  const thick = at(PARTLY, { material: 'concrete', thickness: '0.5 m' });

  test('leaves low ground, and its fill is ordered', () => {
    const plan = withOld([thick]);
    const [one] = plan.pavements;
    if (one === undefined) expect.unreachable();
    // 0.1 m under 13.75 m2; the rest is cut 0.4 m deep
    expect(m3(one.earth.fill.volume)).toBe('1.375');
    expect(m3(one.earth.cut.volume)).toBe('16.5');
    expect(m3(one.earth.stripped)).toBe('6.875');
    expect(
      one.stones.map(({ layer, material, order }) => [layer, material, m3(order.compacted.volume)]),
    ).toEqual([
      ['base', 'stone', '14.628'], // 10.6 x 4.6 x 0.3
      ['fill', 'stone', '1.375'],
    ]);
    const [stone] = plan.totals.stones;
    expect(stone?.fill && m3(stone.fill)).toBe('1.375');
    expect(stone && m3(stone.compacted)).toBe('16.003');
    // loose by 0.8, at 2.1 t/m3: 16.003 x 2.1 t by 12 t a load
    expect(stone && m3(stone.loose)).toBe('20.00375');
    expect(stone?.loads.count).toBe(3);
  });

  test('the fill is of the stone that the job names, else of the lowest layer', () => {
    const stones = ['crushed', 'gravel', 'ballast'].map((id) => ({
      id,
      maxLift: '100 mm',
      compactedDryDensity: '2 t/m3',
      compactedPerLoose: 0.8,
    }));
    const court = {
      layers: [
        ...layersOn('200 mm', 'crushed'),
        { kind: 'sub-base', thickness: '100 mm', material: 'gravel' },
      ],
    };
    const filledWith = (fill?: string) => {
      const job = levelSite([drive(court)], { oldPaving: [thick] });
      Object.assign(job.materials, { stones, ...(fill === undefined ? {} : { fill }) });
      const plan = planFile(job);
      return plan.totals.stones.flatMap(({ material, fill: part }) =>
        part === null ? [] : [`${material} ${m3(part)}`],
      );
    };
    expect(filledWith()).toEqual(['gravel 1.375']);
    expect(filledWith('ballast')).toEqual(['ballast 1.375']);
  });

  test('all over the dig: nothing to cut, and that is said', () => {
    const plan = withOld([at([-5, -5, 20, 20], { thickness: '0.5 m' })]);
    expect(plan.totals.spoil).toBeNull();
    expect(plan.pavements[0]?.dig.soil.to('mm').toString()).toBe('-100');
    expect(plan.pavements[0] && m3(plan.pavements[0].earth.fill.volume)).toBe('5.5');
    const warning = plan.warnings.find(({ code }) => code === 'OLD_PAVING_DEEPER_THAN_DIG');
    expect(warning?.subject).toBe('drive');
    expect(warning?.values).toEqual({
      dig: plan.pavements[0]?.dig.depth,
      fill: plan.pavements[0]?.dig.soil.abs(),
    });
    expect(withOld([at(PARTLY)]).warnings.map(({ code }) => code)).not.toContain(
      'OLD_PAVING_DEEPER_THAN_DIG',
    );
  });

  test('where the ground rises, only its low side is filled', () => {
    // the ground at the west end of the dig lies at the subgrade, at the east end 0.8 m above it
    const level = (x: number) => -0.4 + (0.8 * (x + 0.5)) / 11;
    const points = [
      [-2, -2, level(-2)],
      [12, -2, level(12)],
      [12, 6, level(12)],
      [-2, 6, level(-2)],
    ];
    const corner = (x: number, y: number) => ({ x: `${x} m`, y: `${y} m`, elevation: '0 m' });
    const { earth, dig } = driveOf(
      [at([-5, -5, 20, 20], { thickness: '0.2 m' })],
      { existingLevels: { unit: 'm', points } },
      { grade: { kind: 'plane', levels: [corner(0, 0), corner(10, 0), corner(0, 4)] } },
    );
    // under 0.2 m of asphalt a quarter of the 11 m is low: 2.75 x 0.2 / 2 x 5; the rest 8.25 x 0.6 / 2 x 5
    expect(earth.fill.volume.toNumber('m3')).toBeCloseTo(1.375, 9);
    expect(earth.cut.volume.toNumber('m3')).toBeCloseTo(12.375, 9);
    expect(earth.fillArea?.toNumber('m2')).toBeCloseTo(13.75, 9);
    expect(dig.depth.toNumber('m')).toBeCloseTo(0.4, 9);
    expect(dig.soil.toNumber('m')).toBeCloseTo(0.2, 9);
  });
});

test('under old paving that no level reaches the dig counts like its mean', () => {
  // levels from x = -2 to 8 alone; the ground at finished grade, the dig 0.4 m deep
  const points = rectangle(-2, -2, 8, 6).map(([x, y]) => [x, y, 0]);
  const corner = (x: number, y: number) => ({ x: `${x} m`, y: `${y} m`, elevation: '0 m' });
  const { earth, dig } = driveOf(
    [at([9, 0, 20, 2])],
    { existingLevels: { unit: 'm', points } },
    { grade: { kind: 'plane', levels: [corner(0, 0), corner(10, 0), corner(0, 4)] } },
  );
  // 2.5 x 5 m of the dig lie beyond, and with it all of the asphalt in it, 1.5 x 2 m
  expect(earth.uncovered.toNumber('m2')).toBeCloseTo(12.5, 9);
  expect(dig.depth.toNumber('m')).toBeCloseTo(0.4, 9);
  expect(earth.stripped.toNumber('m3')).toBeCloseTo(0.3, 9);
  expect(earth.cut.volume.toNumber('m3')).toBeCloseTo(22 - 0.3, 9);
});

describe('old paving by its share of a dig', () => {
  const share = (fields: Loose) => ({
    material: 'asphalt',
    thickness: '0.1 m',
    pavement: 'drive',
    ...fields,
  });

  test('takes up that share, all of it where nothing is said', () => {
    const quarter = driveOf([share({ share: 0.25 })]);
    expect(quarter.oldPaving[0]?.area.to('m2').toString()).toBe('13.75');
    expect(m3(quarter.earth.cut.volume)).toBe('20.625');
    const whole = driveOf([share({})]);
    expect(whole.oldPaving[0]?.area.to('m2').toString()).toBe('55');
    expect(m3(whole.earth.cut.volume)).toBe('16.5');
  });

  test('thicker than the dig it is filled under that share', () => {
    const { earth } = driveOf([share({ share: 0.25, thickness: '0.5 m' })]);
    expect(m3(earth.fill.volume)).toBe('1.375');
    expect(m3(earth.cut.volume)).toBe('16.5');
  });

  test('lies in the dig of its pavement alone', () => {
    const plan = planFile(
      levelSite([drive(), pavementOn(rectangle(0, 8, 10, 12), { id: 'yard' })], {
        oldPaving: [share({ pavement: 'yard' })],
      }),
    );
    expect(plan.pavements.map(({ oldPaving }) => oldPaving.length)).toEqual([0, 1]);
  });
});
