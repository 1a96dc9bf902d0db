import fc from 'fast-check';
import type { JobInput } from 'settline/job';
import { length } from 'settline/units';

/** Whole eighths of an inch, said in inches or in the millimetres that are exactly the same. */
interface Eighths {
  readonly us: string;
  readonly metric: string;
}

const eighths = (from: number, to: number): fc.Arbitrary<Eighths> =>
  fc.integer({ min: from, max: to }).map((k) => {
    const inches = length(`${k}/8`, 'in');
    const sign = k < 0 ? '-' : '';
    const size = Math.abs(k);
    const fraction = size % 8 === 0 ? '' : ` ${size % 8}/8`;
    const whole = Math.floor(size / 8);
    const us =
      size < 8 && fraction !== ''
        ? `${sign}${fraction.trim()} in`
        : `${sign}${whole}${fraction} in`;
    return { us, metric: `${inches.to('mm').toFixed()} mm` };
  });

/** A made-up site. */
export const site = fc.record({
  length: eighths(800, 8000),
  width: eighths(300, 2000),
  paver: eighths(16, 32),
  bedding: eighths(6, 12),
  base: eighths(32, 120),
  height: eighths(40, 160),
  old: eighths(8, 48),
  grounds: fc.array(eighths(40, 200), { minLength: 4, maxLength: 4 }),
  offsets: fc.array(eighths(-16, 16), { minLength: 4, maxLength: 4 }),
  finishes: fc.array(eighths(9000, 9600), { minLength: 4, maxLength: 4 }),
  isBestFit: fc.boolean(),
  /** True where finished grade is known at the stakes. */
  isLevelled: fc.boolean(),
});

/** What a made-up site is made of. */
export type Site = typeof site extends fc.Arbitrary<infer T> ? T : never;

/** The job of a made-up site, said in one system of units. */
export function jobOf(of: Site, system: 'us' | 'metric'): JobInput {
  const say = (one: Eighths) => one[system];
  const zero = system === 'us' ? '0 in' : '0 mm';
  const corner = (x: string, y: string) => ({ x, y });
  return {
    version: 1,
    name: 'a made-up site',
    stringHeight: say(of.height),
    stakeTolerance: system === 'us' ? '1 in' : '25.4 mm',
    pavements: [
      {
        id: 'drive',
        use: 'residential-driveway',
        subgrade: 'clay',
        layers: [
          { kind: 'paver', thickness: say(of.paver) },
          { kind: 'bedding', thickness: say(of.bedding), material: 'sand' },
          { kind: 'base', thickness: say(of.base), material: 'stone' },
        ],
        outline: [
          corner(zero, zero),
          corner(say(of.length), zero),
          corner(say(of.length), say(of.width)),
          corner(zero, say(of.width)),
        ],
        edges: ['open', 'restraint', 'open', 'building'],
      },
    ],
    stringLines: [
      {
        id: 'south',
        pavement: 'drive',
        reference: of.isBestFit ? 'best-fit' : 'ends',
        stakes: of.grounds.map((_ground, i) => `S${i}`),
      },
    ],
    stakes: of.grounds.map((ground, i) => ({
      id: `S${i}`,
      x: system === 'us' ? `${i * 10} ft` : `${i * 3048} mm`,
      y: say(of.offsets[i] ?? of.old),
      ground: say(ground),
      ...(of.isLevelled ? { finish: say(of.finishes[i] ?? of.old) } : {}),
    })),
    materials: {
      stones: [
        {
          id: 'stone',
          maxLift: system === 'us' ? '4 in' : '101.6 mm',
          compactedDryDensity: '2200 kg/m3',
          compactedPerLoose: '0.8',
        },
      ],
      sands: [{ id: 'sand', compactedDryDensity: '1700 kg/m3', compactedPerLoose: 0.8 }],
    },
    oldPaving: [{ material: 'asphalt', thickness: say(of.old), pavement: 'drive' }],
    soil: { bankDensity: '1900 kg/m3', loosePerBank: 1.3, compactedPerBank: 0.9 },
    truck: { boxVolume: '8 m3', payload: '12 t' },
  };
}
