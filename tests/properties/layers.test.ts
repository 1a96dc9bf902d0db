import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baseExtension, buildUp, excavationDepth, lifts } from 'settline/build-up';
import { orderPacks } from 'settline/materials';
import { stringDepths } from 'settline/string-line';
import { length, type Length } from 'settline/units';
import { baseOrder, loads, stateVolume, toState, type SoilState } from 'settline/volumes';
import { positiveLength, SOME } from './arbitrary.js';

const layers = fc.array(positiveLength(0.5), { minLength: 1, maxLength: 6 });
const stack = (list: readonly Length[]) =>
  buildUp({ layers: list.map((thickness, i) => ({ name: `L${i}`, thickness })) });

const factors = fc.record({
  loosePerBank: fc.integer({ min: 100, max: 200 }).map((k) => `${k}/100`),
  compactedPerBank: fc.integer({ min: 70, max: 135 }).map((k) => `${k}/100`),
});
const states = fc.constantFrom<SoilState>('bank', 'loose', 'compacted');
const someVolume = fc
  .integer({ min: 0, max: 1_000_000 })
  .map((k) => ({ value: `${k}/997`, unit: 'yd3' }) as const);

describe('depths', () => {
  test('grow layer by layer and add up exactly', () => {
    fc.assert(
      fc.property(layers, positiveLength(3), (list, height) => {
        const made = stack(list);
        const {
          layers: below,
          subgrade,
          finish,
        } = stringDepths({
          buildUp: made,
          stringHeight: height,
          stakes: [{ id: 'S', station: '0 m' }],
        });
        let last = finish;
        below.forEach(({ top, bottom }, i) => {
          expect(top.equals(last)).toBe(true);
          expect(bottom.compare(top)).toBe(1);
          expect(bottom.minus(top).equals(list[i] ?? length('0 m'))).toBe(true);
          last = bottom;
        });
        expect(subgrade.equals(last)).toBe(true);
        expect(subgrade.minus(height).equals(made.total)).toBe(true);
      }),
      SOME,
    );
  });

  test('a thicker layer moves every surface below it down, and none above', () => {
    fc.assert(
      fc.property(layers, fc.nat(), positiveLength(0.5), (list, pick, more) => {
        const k = pick % list.length;
        const thick = list.map((one, i) => (i === k ? one.plus(more) : one));
        const [before, after] = [stack(list), stack(thick)];
        before.layers.forEach(({ bottom }, i) => {
          const moved = after.layers[i]?.bottom.minus(bottom);
          expect(moved?.equals(i >= k ? more : length('0 m'))).toBe(true);
        });
      }),
      SOME,
    );
  });

  test('old surface is subtracted once: total is soil and old surface', () => {
    fc.assert(
      fc.property(
        layers,
        positiveLength(0.5),
        positiveLength(0.5),
        fc.boolean(),
        (list, old, above, isUp) => {
          const existingAboveFinish = isUp ? above : above.negated();
          const dig = excavationDepth({
            buildUp: stack(list),
            removedSurface: old,
            existingAboveFinish,
          });
          expect(dig.soil.plus(old).equals(dig.total)).toBe(true);
          const below = stringDepths({
            buildUp: stack(list),
            stringHeight: '1 m',
            removedSurface: old,
            stakes: [{ id: 'S', station: '0 m', ground: length('1 m').minus(existingAboveFinish) }],
          });
          expect(below.stakes[0]?.dig?.equals(dig.total)).toBe(true);
          expect(below.stakes[0]?.soil?.equals(dig.soil)).toBe(true);
        },
      ),
      SOME,
    );
  });
});

describe('lifts', () => {
  test('are equal, within the limit, add up, and one fewer would not do', () => {
    fc.assert(
      fc.property(
        positiveLength(2),
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 60, max: 100 }),
        (thickness, mm, ratio) => {
          const maxLift = length(mm, 'mm');
          const { count, compacted, loose, tops } = lifts({
            thickness,
            maxLift,
            compactedPerLoose: `${ratio}/100`,
          });
          expect(compacted.times(count).equals(thickness)).toBe(true);
          expect(compacted.compare(maxLift)).toBeLessThanOrEqual(0);
          if (count > 1) expect(thickness.dividedBy(count - 1).compare(maxLift)).toBe(1);
          expect(loose.times(`${ratio}/100`).equals(compacted)).toBe(true);
          expect(tops).toHaveLength(count);
          expect(tops.at(-1)?.equals(thickness)).toBe(true);
          tops.slice(1).forEach((top, i) => {
            expect(top.minus(tops[i] ?? top).equals(compacted)).toBe(true);
          });
        },
      ),
      SOME,
    );
  });

  test('the base extension is never less than the base nor than 6 in, and no more than needed', () => {
    fc.assert(
      fc.property(positiveLength(2), (baseThickness) => {
        const { extension } = baseExtension({ baseThickness });
        expect(extension.compare(baseThickness)).toBeGreaterThanOrEqual(0);
        expect(extension.compare(length('6 in'))).toBeGreaterThanOrEqual(0);
        expect(extension.equals(baseThickness) || extension.equals(length('6 in'))).toBe(true);
      }),
      SOME,
    );
  });
});

describe('soil is conserved', () => {
  test('bank to loose to bank, and round all states', () => {
    fc.assert(
      fc.property(someVolume, states, states, states, factors, (v, a, b, c, of) => {
        const start = stateVolume(v, a);
        const round = toState(toState(toState(start, b, of), c, of), a, of);
        expect(round.volume.equals(start.volume)).toBe(true);
        const direct = toState(start, c, of);
        expect(toState(toState(start, b, of), c, of).volume.equals(direct.volume)).toBe(true);
      }),
      SOME,
    );
  });

  test('loads cover the volume, exceed neither limit, and one fewer would not do', () => {
    fc.assert(
      fc.property(
        someVolume,
        fc.integer({ min: 500, max: 5000 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 40 }),
        (v, density, box, tonnes) => {
          const volume = stateVolume(v, 'loose');
          const trips = loads({
            volume,
            looseDensity: `${density} lb/yd3`,
            boxVolume: `${box} yd3`,
            payload: `${tonnes} t`,
          });
          const { count, perLoad, lastLoad, total } = trips;
          expect(perLoad.volume.times(count).compare(volume.volume)).toBeGreaterThanOrEqual(0);
          expect(perLoad.volume.to('yd3').lte(box)).toBe(true);
          expect(perLoad.mass.to('t').lte(tonnes)).toBe(true);
          expect(
            trips.limitedBy === 'volume'
              ? perLoad.volume.to('yd3').eq(box)
              : perLoad.mass.to('t').eq(tonnes),
          ).toBe(true);
          if (count > 0) {
            expect(perLoad.volume.times(count - 1).compare(volume.volume)).toBe(-1);
            expect(
              perLoad.volume
                .times(count - 1)
                .plus(lastLoad.volume)
                .equals(volume.volume),
            ).toBe(true);
            expect(lastLoad.volume.compare(perLoad.volume)).toBeLessThanOrEqual(0);
          }
          expect(total.volume.equals(volume.volume)).toBe(true);
        },
      ),
      SOME,
    );
  });

  test('an order covers the need with less than one pack over', () => {
    fc.assert(
      fc.property(someVolume, fc.integer({ min: 1, max: 30 }), (v, k) => {
        const need = stateVolume(v, 'loose').volume;
        const packs = [{ name: 'pack', holds: { value: `${k}/8`, unit: 'yd3' } as const }];
        const { count, ordered, surplus } = orderPacks({ volume: need, packs });
        expect(ordered.minus(need).equals(surplus)).toBe(true);
        expect(surplus.isNegative()).toBe(false);
        expect(surplus.to('yd3').lt(k / 8)).toBe(true);
        expect(Number.isSafeInteger(count)).toBe(true);
      }),
      SOME,
    );
  });

  test('base orders grow with waste and moisture as they should', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        positiveLength(1),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 20 }),
        (ft2, thickness, waste, moisture) => {
          const options = {
            area: `${ft2} ft2`,
            thickness,
            compactedDryDensity: '3700 lb/yd3',
            compactedPerLoose: '0.8',
          };
          const bare = baseOrder(options);
          const full = baseOrder({
            ...options,
            waste: `${waste}/100`,
            moisture: `${moisture}/100`,
          });
          expect(full.compacted.volume.equals(bare.compacted.volume)).toBe(true);
          expect(full.loose.volume.equals(bare.loose.volume.times(`${100 + waste}/100`))).toBe(
            true,
          );
          expect(full.deliveredMass.equals(full.dryMass.times(`${100 + moisture}/100`))).toBe(true);
          expect(
            full.dryMass
              .dividedBy(full.loose.volume)
              .equals(bare.dryMass.dividedBy(bare.loose.volume)),
          ).toBe(true);
        },
      ),
      SOME,
    );
  });
});
