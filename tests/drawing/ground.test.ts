// Drawings of the ground: figures read back from the pictures, and their layout.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { minimumBuildUp, type MinimumBuildUpOptions } from 'settline/build-up';
import {
  drawFrostDepth,
  drawMinimumBuildUp,
  drawSoilPhases,
  DRAWING_TEXTS,
  type DrawingLabel,
  type DrawOptions,
} from 'settline/drawing';
import {
  berggrenDepth,
  frostBase,
  soilPhases,
  stefanDepth,
  type FrostLayerInput,
} from 'settline/ground';
import { expectFault } from '../faults.js';
import { runs } from '../runs.js';
import { STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, pictureOf, readXml, textsOf, type Element } from './read-svg.js';

const US: DrawOptions = { system: 'us' };
const METRIC: DrawOptions = { system: 'metric' };
const words = (root: Element): string[] => elementsOf(root, 'text').map(({ text }) => text);
const styled = (root: Element, name: string, style: string): Element[] =>
  elementsOf(root, name).filter(({ attributes }) => attributes['class'] === style);
const yOf = (root: Element, style: string): number =>
  numberOf(styled(pictureOf(root), 'line', style)[0] ?? root, 'y1');
const describedBy = (root: Element): string => elementsOf(root, 'desc')[0]?.text ?? '';

const clay: FrostLayerInput = {
  name: 'clay',
  conductivity: { value: 2, unit: 'W/(m K)' },
  latentHeat: { value: 86_400, unit: 'kJ/m3' },
};
const winterOf = (value: number) =>
  ({ airIndex: { value, unit: 'C-days' }, surfaceFactor: 1 }) as const;
const base = { name: 'base', soil: 'sandy', dryDensity: '2000 kg/m3', moisture: 0.05 } as const;
const silt = { name: 'silt', soil: 'silt-clay', dryDensity: '1600 kg/m3', moisture: 0.2 } as const;
const year = { seasonDays: 100, meanAnnual: { value: 8, unit: 'C' } } as const;
const built = berggrenDepth({
  ...winterOf(450),
  ...year,
  layers: [{ ...base, thickness: '300 mm' }, silt],
});
const drive = minimumBuildUp({ use: 'residential-driveway', subgrade: 'clay', frost: true });
const against = frostBase({
  frostDepth: '36 in',
  pavement: '4 in',
  subgradeMoisture: '0.20',
  baseMoisture: '0.05',
});
const stone = soilPhases({ dryDensity: '2000 kg/m3', moisture: 0.05, specificGravity: 2.5 });

/** Depths and styles of the lines across the ground, in pixels below the surface. */
const linesOf = (root: Element) => {
  const surface = yOf(root, 'finish');
  return { at: (style: string) => yOf(root, style) - surface };
};

describe('the depth of frost', () => {
  const root = readXml(drawFrostDepth(built, METRIC));

  test('has each depth and thickness as the library prints it', () => {
    expect(textsOf(root, 'depth')).toEqual([
      '0',
      '300',
      built.twoZoneDepth.to('mm').toFixed(0),
      built.depth.to('mm').toFixed(0),
    ]);
    expect(textsOf(root, 'thickness')).toEqual(['300']);
    expect(textsOf(root, 'level')).toEqual(['surface', 'silt top', 'frost, two zones', 'frost']);
    const [, frozen] = built.layers;
    expect(words(root).join(' ')).toContain(
      `silt: ${frozen?.frozen.to('mm').toFixed(0) ?? ''} mm of it freezes`,
    );
    expect(describedBy(root)).toMatch(
      /^Frost goes \d+ mm deep, by the modified Berggren equation\. base: all of it freezes, 300 mm; silt: \d+ mm of it freezes\.$/,
    );
  });

  test('is to scale: frost, two zones and the top of the silt', () => {
    const { at } = linesOf(root);
    const scale = at('string') / built.depth.toNumber('m');
    expect(at('old') / scale).toBeCloseTo(built.twoZoneDepth.toNumber('m'), 3);
    expect(at('edge') / scale).toBeCloseTo(0.3, 3);
  });

  test('by Stefan has one line, and says whose equation it is', () => {
    const stefan = readXml(drawFrostDepth(stefanDepth({ ...winterOf(250), layers: [clay] }), US));
    expect(textsOf(stefan, 'depth')).toEqual(['0', '39 3/8']);
    expect(styled(pictureOf(stefan), 'line', 'old')).toHaveLength(0);
    expect(words(stefan).join(' ')).toContain("depth of frost, by Stefan's equation");
    expect(words(stefan).join(' ')).not.toContain('beyond the equations');
    expect(words(root).join(' ')).toContain('beyond the equations');
  });

  test('without frost says so, and has no line of it', () => {
    const none = readXml(drawFrostDepth(stefanDepth({ ...winterOf(0), layers: [clay] }), US));
    expect(words(none).join(' ')).toContain('No frost.');
    expect(words(none).join(' ')).toContain('clay: none of it freezes');
    expect(styled(pictureOf(none), 'line', 'string')).toHaveLength(0);
    expect(textsOf(none, 'depth')).toEqual(['0']);
  });

  test('leaves out layers far below the frost, and not the one it ends in', () => {
    const layers = [
      { ...base, thickness: '1 m' },
      { ...silt, thickness: '1 m' },
      { ...silt, name: 'rock' },
    ];
    const shallow = readXml(drawFrostDepth(stefanDepth({ ...winterOf(10), layers }), METRIC));
    expect(textsOf(shallow, 'layer')).toEqual(['base']);
    expect(words(shallow).join(' ')).not.toContain('rock');
    // what it says in words has every layer
    expect(describedBy(shallow)).toContain('rock: none of it freezes');
  });
});

describe('minimum layers', () => {
  const root = readXml(drawMinimumBuildUp(drive, { ...US, frost: against }));

  test('have each thickness, and where it is from', () => {
    expect(textsOf(root, 'thickness')).toEqual(['2 3/8', '1', '6', '2', '4']);
    expect(textsOf(root, 'layer').slice(0, 5)).toEqual([
      'paver',
      'bedding',
      'base, published',
      'base for clay',
      'base for frost',
    ]);
    const all = words(root).join(' ');
    expect(all).toContain('base for clay: 2 in, common practice');
    expect(all).toContain('base for frost: 4 in, one trade page');
    expect(all).toContain('base, published: 6 in, published minimum');
    const wet = minimumBuildUp({ use: 'pedestrian', subgrade: 'wet-or-weak' });
    expect(words(readXml(drawMinimumBuildUp(wet, US))).join(' ')).toContain(
      'base for wet ground: 4 in, trade association',
    );
  });

  test('show how deep the base against frost would go, to scale', () => {
    // 3 3/8 in of pavers and bedding over 12, 21 1/3 and 32 in of base
    expect(textsOf(root, 'depth')).toEqual(['0', '15 3/8', '24 11/16', '35 3/8']);
    const { at } = linesOf(root);
    const scale = at('edge') / drive.paver.plus(drive.bedding).plus(drive.base).toNumber('in');
    expect(at('string') / scale).toBeCloseTo(3.375 + 64 / 3, 2);
    expect(at('old') / scale).toBeCloseTo(35.375, 2);
    expect(describedBy(root)).toContain('Together 15 3/8 in.');
    expect(describedBy(root)).toContain(
      'Base of 21 5/16 in limits frost in the subgrade, 32 in keeps it out.',
    );
  });

  test('without a base against frost end at the subgrade', () => {
    const plain = readXml(drawMinimumBuildUp(drive, US));
    expect(textsOf(plain, 'depth')).toEqual(['0', '15 3/8']);
    expect(styled(pictureOf(plain), 'line', 'string')).toHaveLength(0);
    expect(describedBy(plain)).not.toContain('limits frost');
  });
});

describe('the phases of a soil', () => {
  test('are as high as their share of the volume, with their mass', () => {
    // 2000 kg of solids at 2500 kg/m3 are 0.8 of the volume, 100 kg of water 0.1
    const root = readXml(drawSoilPhases(stone, METRIC));
    expect(textsOf(root, 'phase')).toEqual(['air', 'water', 'solids']);
    expect(textsOf(root, 'volume')).toEqual(['10.0%', '10.0%', '80.0%']);
    expect(textsOf(root, 'mass')).toEqual(['0 kg/m3', '100 kg/m3', '2000 kg/m3']);
    const boxes = styled(pictureOf(root), 'rect', 'stake').map((box) => numberOf(box, 'height'));
    const [solids] = elementsOf(pictureOf(root), 'polygon');
    const ys = (solids?.attributes['points'] ?? '')
      .split(' ')
      .map((at) => Number(at.split(',')[1]));
    const high = Math.max(...ys) - Math.min(...ys);
    expect(boxes.map((one) => one / high)).toEqual([
      expect.closeTo(0.125, 3),
      expect.closeTo(0.125, 3),
    ]);
    expect(words(root).join(' ')).toContain('voids 20.0%');
    expect(words(root).join(' ')).toMatch(/Void ratio 0\.250, porosity 0\.200, saturation 50\.0%/);
    expect(words(root).join(' ')).toContain('Water that fills the voids: 100 kg/m3.');
  });

  test('in US units', () => {
    const root = readXml(drawSoilPhases(stone, US));
    expect(textsOf(root, 'mass')).toEqual(['0.0 lb/ft3', '6.2 lb/ft3', '124.9 lb/ft3']);
  });

  test('dry and full have no block of what is not there', () => {
    const count = (moisture: number) => {
      const soil = soilPhases({ dryDensity: '2000 kg/m3', moisture, specificGravity: 2.5 });
      return styled(pictureOf(readXml(drawSoilPhases(soil, METRIC))), 'rect', 'stake').length;
    };
    expect([count(0), count(0.05), count(0.1)]).toEqual([1, 2, 1]);
    const solid = soilPhases({ dryDensity: '2500 kg/m3', moisture: 0, specificGravity: 2.5 });
    const root = readXml(drawSoilPhases(solid, METRIC));
    expect(textsOf(root, 'volume')).toEqual(['0.0%', '0.0%', '100.0%']);
    expect(words(root).join(' ')).not.toContain('voids 0');
  });
});

/** Drawings with long names, many layers, thin and thick ones. */
const DRAWINGS: readonly ((style: DrawOptions) => string)[] = [
  (style) => drawFrostDepth(built, style),
  (style) =>
    drawFrostDepth(
      stefanDepth({
        ...winterOf(15_000),
        layers: [
          ...Array.from({ length: 60 }, (_, k) => ({
            ...base,
            name: k % 2 === 0 ? 'w'.repeat(200) : '<b>&"',
            thickness: '1 mm',
          })),
          { ...silt, name: 'חצר \u202e12' },
        ],
      }),
      style,
    ),
  (style) => drawFrostDepth(stefanDepth({ ...winterOf(0), layers: [clay] }), style),
  (style) => drawMinimumBuildUp(drive, style),
  (style) => drawMinimumBuildUp(drive, { ...style, frost: against }),
  (style) => drawSoilPhases(stone, style),
];

describe('all of them', () => {
  test('have their texts apart and inside, and every label of their own', () => {
    const label: DrawingLabel = (key, values) =>
      DRAWING_TEXTS[key].replace(/\{(\w+)\}/g, (_, name: string) => values[name] ?? '');
    for (const style of [...STYLES, { system: 'us', narrow: true, width: 320 } as const]) {
      for (const draw of DRAWINGS) {
        const svg = draw(style);
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toMatch(/<script|<b>|href|url\(|[\u202a-\u202e]/);
        const root = readXml(svg);
        expect(root.attributes['role']).toBe('img');
        expect(elementsOf(root, 'title')[0]?.text).not.toBe('');
        expect(draw({ ...style, label })).toBe(svg);
        const rules = [...svg.matchAll(/\.settline-\w+ \.([\w-]+)\{/g)].map(([, one]) => one);
        const marks = [...svg.matchAll(/ class="(?:area |)([\w-]+)"/g)].map(([, one]) => one);
        for (const one of ['string', 'old', 'finish', 'edge', 'stake', 'hatch']) {
          if (marks.includes(one)) expect(rules).toContain(one);
        }
      }
    }
  });

  test('of made-up ground have their texts apart and inside', () => {
    const layer = fc.record({
      name: fc.string({ maxLength: 30 }).map((text) => `l${text}`),
      thickness: fc.integer({ min: 1, max: 2000 }).map((mm) => `${mm} mm`),
      soil: fc.constant('sandy' as const),
      dryDensity: fc.integer({ min: 1700, max: 2300 }).map((d) => `${d} kg/m3`),
      moisture: fc.integer({ min: 2, max: 20 }).map((percent) => percent / 100),
    });
    const least = fc.record({
      use: fc.constantFrom('pedestrian', 'residential-driveway', 'parking-or-residential-street'),
      subgrade: fc.constantFrom('well-drained', 'clay', 'wet-or-weak'),
      frost: fc.boolean(),
    }) as fc.Arbitrary<MinimumBuildUpOptions>;
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 4000 }),
        least,
        fc.constantFrom(...STYLES),
        (layers, value, of, style) => {
          const frost = berggrenDepth({ ...winterOf(value), ...year, layers });
          expect(layoutFaults(drawFrostDepth(frost, style))).toEqual([]);
          const shallow = frostBase({
            frostDepth: `${value} mm`,
            pavement: '85 mm',
            subgradeMoisture: 0.2,
            baseMoisture: 0.05,
          });
          const svg = drawMinimumBuildUp(minimumBuildUp(of), { ...style, frost: shallow });
          expect(layoutFaults(svg)).toEqual([]);
        },
      ),
      runs(60),
    );
    const share = fc.integer({ min: 0, max: 1000 }).map((parts) => parts / 1000);
    fc.assert(
      fc.property(share, share, fc.constantFrom(...STYLES), (n, saturation, style) => {
        const porosity = 0.95 * n;
        const soil = soilPhases({ porosity, saturation, specificGravity: 2.65 });
        expect(layoutFaults(drawSoilPhases(soil, style))).toEqual([]);
      }),
      runs(100),
    );
  });

  test.each([
    ['nothing', null],
    ['a list', []],
    ['a frost without layers', { ...built, layers: [] }],
    ['a layer without its frozen part', { ...built, layers: [{ name: 'a' }] }],
    ['another kind of soil', { ...built, layers: [{ ...built.layers[0], soil: 'peat' }] }],
    ['an addition without its reason', { ...drive, adjustments: [{ added: drive.base }] }],
    ['phases without a density', { ...stone, dryDensity: 2 }],
    ['phases without a ratio', { ...stone, porosity: undefined }],
    ['more voids than soil', { ...stone, porosity: 1e9 }],
    ['less than no water', { ...stone, moisture: -0.1 }],
  ])('refuse %s', (_what, value) => {
    const options = US;
    const draws = [drawFrostDepth, drawMinimumBuildUp, drawSoilPhases] as const;
    const refused = draws.filter((draw) => {
      try {
        draw(value as never, options);
        return false;
      } catch {
        return true;
      }
    });
    expect(refused).toHaveLength(3);
    for (const draw of draws) expectFault(() => draw(value as never, options), 'WRONG_TYPE');
  });

  test('refuse options that are none', () => {
    const frost = { limited: against.limited } as never;
    const issue = expectFault(() => drawMinimumBuildUp(drive, { ...US, frost }), 'WRONG_TYPE');
    expect(issue.path).toEqual(['frost']);
    expectFault(() => drawFrostDepth(built, { ...US, width: 500 }), 'OUT_OF_RANGE');
    expectFault(() => drawSoilPhases(stone, {} as never), 'REQUIRED');
  });
});
