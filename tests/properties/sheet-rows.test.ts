// What a sheet prints adds up: every row of depths, lifts, stakes and digs, to the mark of the tape.
import { runs } from '../runs.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planJob, readJob, renderJobSheet } from 'settline/job';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import { flat, marks, rowsUnder, section } from '../printed-table.js';

/** A depth between the marks of both tapes: hundredths of a millimetre. */
const depth = (from: number, to: number) =>
  fc.integer({ min: from * 100, max: to * 100 }).map((hundredths) => `${hundredths / 100} mm`);

const site = fc.record({
  height: depth(150, 600),
  paver: depth(40, 100),
  bedding: depth(15, 40),
  base: depth(90, 400),
  subBase: depth(90, 400),
  maxLift: depth(75, 130),
  settlement: depth(1, 9),
  old: depth(30, 150),
  grounds: fc.array(depth(150, 700), { minLength: 3, maxLength: 3 }),
});

type Site = typeof site extends fc.Arbitrary<infer T> ? T : never;

function sheetOf(of: Site, system: 'us' | 'metric'): string {
  const { stones, sands } = cedarCourt.materials;
  const [court] = cedarCourt.pavements;
  const job = {
    ...cedarCourt,
    materials: {
      ...cedarCourt.materials,
      stones: stones.map((stone) => ({ ...stone, maxLift: of.maxLift })),
      sands: sands.map((sand) => ({ ...sand, settlement: of.settlement })),
    },
    pavements: [
      {
        ...court,
        layers: court?.layers.map((layer) => ({
          ...layer,
          thickness: layer.kind === 'sub-base' ? of.subBase : of[layer.kind as 'base'],
        })),
      },
    ],
    oldPaving: [{ material: 'concrete', thickness: of.old, pavement: 'court' }],
    stakes: of.grounds.map((ground, k) => ({ id: `S${k}`, x: `${k * 4} m`, y: '-1 m', ground })),
    stringLines: [
      {
        id: 'row',
        pavement: 'court',
        height: of.height,
        stakes: of.grounds.map((_, k) => `S${k}`),
      },
    ],
  };
  return renderJobSheet(planJob(readJob(job)), { system, width: 120 });
}

test.each(['us', 'metric'] as const)('every printed row adds up, %s', (system) => {
  fc.assert(
    fc.property(site, (of) => {
      const sheet = sheetOf(of, system);
      const m = (cell: string | undefined) => marks(cell, system);
      const layers = rowsUnder(sheet, 'Depths below string', [
        'paver',
        'bedding',
        'base',
        'sub-base',
      ]);
      expect(layers).toHaveLength(4);
      layers.forEach(([, top, bottom, thickness], k) => {
        expect(m(bottom) - m(top)).toBe(m(thickness));
        expect(m(layers[k + 1]?.[1] ?? bottom)).toBe(m(bottom));
      });
      const subgrade = m(rowsUnder(sheet, 'Depths below string', ['SUBGRADE'])[0]?.[1]);
      expect(subgrade).toBe(m(layers.at(-1)?.[2]));

      const names = Array.from({ length: 12 }, (_, k) => `${k + 1}`);
      let under = subgrade;
      const lifts = rowsUnder(sheet, 'Lifts, from the subgrade up', names);
      expect(lifts.length).toBeGreaterThan(1);
      for (const [, looseTop, compactedTop, loose, compacted] of lifts) {
        expect(under - m(looseTop)).toBe(m(loose));
        expect(under - m(compactedTop)).toBe(m(compacted));
        under = m(compactedTop);
      }
      expect(under).toBe(m(layers[2]?.[1]));

      const stakes = rowsUnder(sheet, 'Depths at the stakes', ['S0', 'S1', 'S2']);
      expect(stakes).toHaveLength(3);
      for (const [, , ground, dig, old, soil] of stakes) {
        expect(subgrade - m(ground)).toBe(m(dig));
        expect(m(dig) - m(old)).toBe(m(soil));
      }

      const string = flat(section(sheet, 'STRING ROW'));
      for (const [words, finished] of [
        ['screed rails', layers[1]?.[1]],
        ['top of pavers laid', layers[0]?.[1]],
      ] as const) {
        const [, high, placed] =
          new RegExp(`${words}, (.+?) (?:in|mm) high ([\\d/ ]+)`).exec(string) ?? [];
        expect(m(finished) - m(placed?.trim())).toBe(m(high));
      }

      // a fill is printed without its sign, under a name of its own
      const signed = (dug: string, filled: string) => {
        const [row] = rowsUnder(sheet, 'Depth of dig', [dug, filled]);
        return row?.[0] === dug ? m(row[1]) : -m(row?.[1]);
      };
      const old = signed('old paving, averaged over the dig', '');
      const soil = signed('soil to dig after stripping', 'fill after stripping');
      expect(signed('dig', 'fill') - old).toBe(soil);
    }),
    runs(40),
  );
});
