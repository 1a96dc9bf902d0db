// Sites of several pavements and pieces of old paving, against a count of cells of 0.1 m.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import { planFile } from '../plan-file.js';
import { runs } from '../runs.js';

/** In tenths of a metre: west, south, east, north. */
type Box = readonly [number, number, number, number];

const size = fc.integer({ min: 5, max: 30 });
const pavements = fc
  .array(fc.tuple(size, size, fc.integer({ min: 0, max: 15 }), fc.integer({ min: 0, max: 15 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((parts) => {
    let west = 0;
    return parts.map(([long, wide, gap, south]): Box => {
      const box = [west + gap, south, west + gap + long, south + wide] as const;
      west += gap + long;
      return box;
    });
  });
const bases = fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 4, maxLength: 4 });
const pieces = fc.array(
  fc.tuple(
    fc.integer({ min: -10, max: 90 }),
    fc.integer({ min: -10, max: 20 }),
    size,
    size,
    fc.integer({ min: 1, max: 5 }),
  ),
  { maxLength: 3 },
);
const inside = ([west, south, east, north]: Box, x: number, y: number): boolean =>
  x >= west && x < east && y >= south && y < north;
const wider = ([west, south, east, north]: Box, by: number): Box => [
  west - by,
  south - by,
  east + by,
  north + by,
];
const inMetres = ([west, south, east, north]: Box) =>
  rectangle(west / 10, south / 10, east / 10, north / 10);

interface Site {
  readonly boxes: readonly Box[];
  /** Thickness of the base of each, in tenths of a metre. */
  readonly bases: readonly number[];
  readonly old: readonly { readonly box: Box; readonly thick: number }[];
}

/** Volumes in thousandths of a cubic metre, cell by cell. */
function countedOn({ boxes, bases: thick, old }: Site) {
  const total = { dig: 0, base: 0, stone: 0, cut: 0, fill: 0, stripped: 0 };
  // the deepest comes first, of equal ones the first by id
  const order = boxes
    .map((box, k) => ({ box, base: thick[k] ?? 0 }))
    .sort((a, b) => b.base - a.base);
  for (let x = -10; x < 200; x += 1) {
    for (let y = -10; y < 60; y += 1) {
      // a base goes out as far as it is thick, the dig 0.2 m farther
      const laid = order.find(({ box, base }) => inside(wider(box, base), x, y));
      if (laid !== undefined) {
        total.base += 1;
        total.stone += laid.base;
      }
      const dug = order.find(({ box, base }) => inside(wider(box, base + 2), x, y));
      if (dug === undefined) continue;
      const stripped = old.reduce((sum, { box, thick: t }) => sum + (inside(box, x, y) ? t : 0), 0);
      const left = dug.base + 1 - stripped;
      total.dig += 1;
      total.stripped += stripped;
      total[left > 0 ? 'cut' : 'fill'] += Math.abs(left);
    }
  }
  return total;
}

const fileOf = ({ boxes, bases: thick, old }: Site) =>
  levelSite(
    boxes.map((box, k) =>
      pavementOn(inMetres(box), {
        id: `p${k}`,
        layers: layersOn(`${(thick[k] ?? 0) * 100} mm`),
      }),
    ),
    {
      oldPaving: old.map((piece) => ({
        material: 'concrete',
        thickness: `${piece.thick * 100} mm`,
        density: '2 t/m3',
        outline: { unit: 'm', points: inMetres(piece.box) },
      })),
    },
  );

const sites = fc
  .record({ boxes: pavements, bases, old: pieces })
  .map(({ boxes, bases: thick, old }): Site => ({
    boxes,
    bases: thick,
    old: old.map(([west, south, long, wide, t]) => ({
      box: [west, south, west + long, south + wide],
      thick: t,
    })),
  }));

test('digs, bases, old paving, soil and fill of a site are those of its cells', () => {
  fc.assert(
    fc.property(sites, (site) => {
      const { totals, pavements: plans } = planFile(fileOf(site));
      const counted = countedOn(site);
      const [stone] = totals.stones;
      const fill = stone?.fill?.toNumber('m3') ?? 0;
      const found = {
        dig: totals.digArea.toNumber('m2') * 100,
        base: totals.baseArea.toNumber('m2') * 100,
        stone: ((stone?.compacted.toNumber('m3') ?? 0) - fill) * 1000,
        cut: (totals.spoil?.bank.toNumber('m3') ?? 0) * 1000,
        fill: fill * 1000,
        stripped: totals.oldPaving.reduce((sum, { mass }) => sum + mass.toNumber('t') * 500, 0),
      };
      for (const [name, value] of Object.entries(counted)) {
        expect(found[name as keyof typeof found], name).toBeCloseTo(value, 6);
      }
      expect(plans.reduce((sum, { earth }) => sum + earth.stripped.toNumber('m3'), 0)).toBeCloseTo(
        counted.stripped / 1000,
        9,
      );
    }),
    runs(100),
  );
});

test('whatever the order of pavements and pieces', () => {
  fc.assert(
    fc.property(sites, (site) => {
      const file = fileOf(site);
      const turned = fileOf(site);
      turned.pavements.reverse();
      (turned['oldPaving'] as unknown[]).reverse();
      const [one, other] = [planFile(file), planFile(turned)];
      expect(other.totals.spoil).toEqual(one.totals.spoil);
      expect(other.totals.stones).toEqual(one.totals.stones);
      expect(other.totals.digArea).toEqual(one.totals.digArea);
    }),
    runs(30),
  );
});
