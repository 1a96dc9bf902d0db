// Volumes carry their states, which `volumes` defines; this adds bases of several thicknesses and the
// ways in which suppliers state a density.
import { inState, type StateVolume } from '../volumes/state-volume.js';
import { makeReader, type Reader } from '../input/reader.js';
import { sum } from '../units/aggregate.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import type { Density, Mass, Volume } from '../units/quantity.js';
import { ratioToDecimal, type Ratio } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { onePlus, overRatio, readRatio, timesRatio } from './exact.js';
import { AREA, FRACTION, LAYER } from './limits.js';
import { readDryDensity, type DryDensity, type DryDensityInput } from './stone-density.js';

/** A part of a base that has one thickness. */
export interface BasePartInput {
  readonly name?: string;
  readonly area: AreaInput;
  readonly thickness: LengthInput;
}

/** One part of a base, and what it takes. */
export interface BasePart {
  readonly name: string;
  /** In place, without waste. */
  readonly compacted: StateVolume<'compacted'>;
  /** In the truck, with waste. */
  readonly loose: StateVolume<'loose'>;
  /** On the weighbridge, with waste. */
  readonly deliveredMass: Mass;
}

/** Stone for a base of one or several thicknesses. */
export interface BaseStone extends Worked {
  /** In place, without waste: what the hole holds. */
  readonly compacted: StateVolume<'compacted'>;
  /** In the truck, with waste. */
  readonly loose: StateVolume<'loose'>;
  /** Dry stone, with waste. */
  readonly dryMass: Mass;
  /** On the weighbridge: dry stone and its water, with waste. */
  readonly deliveredMass: Mass;
  /** The water in it: paid for by the ton, and not in the hole. */
  readonly water: Mass;
  readonly compactedDryDensity: Density;
  readonly parts: readonly BasePart[];
}

/**
 * Stone for a base in compacted volume, loose volume and mass: over all parts `Vc = sum(A t)`,
 * `Vl = Vc (1 + waste) / (compacted per loose)`, `dry = Vc (1 + waste) x dry density`,
 * `delivered = dry (1 + moisture)`. A mass is never multiplied by the loose factor.
 *
 * @param options.parts - areas of one thickness each, extension included: `area` [area] and compacted
 *   `thickness` [length], `name` if wanted
 * @param options.compactedDryDensity - in place, dry [density]; two of this and the next two
 * @param options.looseDryDensity - in the truck, dry [density]
 * @param options.compactedPerLoose - compacted over loose volume, 0.5 to 1
 * @param options.moisture - water over dry mass, a fraction 0 to 1, default 0
 * @param options.waste - a fraction 0 to 1 on top, default 0
 * @returns compacted and loose volume, dry and delivered mass, water, and the same for each part
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless two of the three are given,
 *   `RATIO_OUT_OF_RANGE`, `OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE`, `EMPTY_LIST` and the reading codes
 * @source derived
 * @example
 * const stone = baseStone({
 *   parts: [
 *     { name: 'drive', area: '81 ft2', thickness: '8 in' },
 *     { name: 'walk', area: '81 ft2', thickness: '4 in' },
 *   ],
 *   compactedDryDensity: '3700 lb/yd3',
 *   compactedPerLoose: 0.8,
 *   moisture: 0.05,
 * });
 * stone.compacted.to('yd3').toString() //=> '3'
 * stone.loose.to('yd3').toString() //=> '3.75'
 * stone.deliveredMass.to('lb').toString() //=> '11655'
 */
export function baseStone(
  options: DryDensityInput & {
    readonly parts: readonly BasePartInput[];
    readonly moisture?: number | string;
    readonly waste?: number | string;
  },
): BaseStone {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const parts = readParts(reader, fields['parts']);
  const density = readDryDensity(reader, fields);
  const moisture = readRatio(reader, fields['moisture'] ?? 0, ['moisture'], FRACTION);
  const waste = readRatio(reader, fields['waste'] ?? 0, ['waste'], FRACTION);
  reader.finish();

  const worked = parts.map((part) => ({
    name: part.name,
    ...worksOut(part.area.times(part.thickness), { density, moisture, waste }),
  }));
  const total = worksOut(sum(worked.map(({ compacted }) => compacted)), {
    density,
    moisture,
    waste,
  });
  const stone = {
    compacted: inState(total.compacted, 'compacted'),
    loose: inState(total.loose, 'loose'),
    dryMass: total.dryMass,
    deliveredMass: total.deliveredMass,
    water: total.deliveredMass.minus(total.dryMass),
    compactedDryDensity: density.compacted,
    parts: worked.map(({ name, compacted, loose, deliveredMass }) => ({
      name,
      compacted: inState(compacted, 'compacted'),
      loose: inState(loose, 'loose'),
      deliveredMass,
    })),
  };
  return withWorking(stone, () => [
    ...parts.map((part, index) => ({
      title: `Compacted volume, ${part.name}`,
      formula: 'V = A x t',
      given: [given('A', 'area', part.area), given('t', 'compacted thickness', part.thickness)],
      result: given('V', 'compacted volume', worked[index]?.compacted ?? total.compacted),
      source: 'derived' as const,
    })),
    {
      title: 'Loose volume of the base',
      formula: 'Vl = Vc (1 + q) / r',
      given: [
        given('Vc', 'compacted volume', total.compacted),
        given('q', 'waste', ratioToDecimal(waste)),
        given('r', 'compacted per loose', ratioToDecimal(density.compactedPerLoose)),
      ],
      result: given('Vl', 'loose volume', total.loose),
      source: 'derived',
    },
    {
      title: 'Delivered mass of the base',
      formula: 'M = Vc (1 + q) d (1 + w)',
      given: [
        given('Vc', 'compacted volume', total.compacted),
        given('q', 'waste', ratioToDecimal(waste)),
        given('d', 'dry density in place', density.compacted),
        given('w', 'moisture of dry mass', ratioToDecimal(moisture)),
      ],
      result: given('M', 'delivered mass', total.deliveredMass),
      source: 'derived',
    },
  ]);
}

interface Allowances {
  readonly density: DryDensity;
  readonly moisture: Ratio;
  readonly waste: Ratio;
}

function worksOut(compacted: Volume, { density, moisture, waste }: Allowances) {
  const withWaste = timesRatio(compacted, onePlus(waste));
  const loose = overRatio(withWaste, density.compactedPerLoose);
  const dryMass = withWaste.times(density.compacted);
  return { compacted, loose, dryMass, deliveredMass: timesRatio(dryMass, onePlus(moisture)) };
}

function readParts(reader: Reader, value: unknown) {
  return reader.list(value, ['parts']).map((item, index) => {
    const path = ['parts', index];
    const fields = reader.object(item, path);
    const name =
      fields['name'] === undefined
        ? `part ${index + 1}`
        : reader.text(fields['name'], [...path, 'name']);
    return {
      name,
      area: reader.quantity('area', fields['area'], [...path, 'area'], AREA),
      thickness: reader.quantity('length', fields['thickness'], [...path, 'thickness'], LAYER),
    };
  });
}
