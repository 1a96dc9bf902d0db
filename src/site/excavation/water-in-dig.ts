import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { area, type AreaInput, type FlowInput, type LengthInput } from '../../units/construct.js';
import type { Length, Time, Volume } from '../../units/quantity.js';
import { given, withWorking, type Worked } from '../../working.js';
import { AREA, DEPTH, FLOW, FRACTION } from '../limits.js';

/** Water that rain leaves in an open dig. */
export interface WaterInDig extends Worked {
  readonly volume: Volume;
  /** Spread level over the dig. */
  readonly depth: Length;
  /** With the pump given, rain over; null without a pump. */
  readonly pumpTime: Time | null;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Water in an open dig after rain: `V = rain x (A + sum of C A of what drains in)`, its depth over
 * the dig and the time to pump it out. Soil is taken as full: nothing soaks away.
 *
 * @param options.area - open area of the dig [area]
 * @param options.rain - depth of rain [length]
 * @param options.drainsIn - ground and roofs that run into it: `area` [area], `coefficient` 0 to 1
 * @param options.pump - what the pump lifts [flow]
 * @returns volume of water, depth, pumping time; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const water = waterInDig({ area: '72.4 m2', rain: '18 mm', pump: '120 l/min' });
 * water.volume.to('m3').toString() //=> '1.3032'
 * water.pumpTime?.to('min').toString() //=> '10.86'
 */
export function waterInDig(options: {
  readonly area: AreaInput;
  readonly rain: LengthInput;
  readonly drainsIn?: readonly {
    readonly area: AreaInput;
    readonly coefficient: number | string;
  }[];
  readonly pump?: FlowInput;
}): WaterInDig {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const open = reader.quantity('area', fields['area'], ['area'], AREA);
  const rain = reader.quantity('length', fields['rain'], ['rain'], DEPTH);
  const beside =
    fields['drainsIn'] === undefined
      ? []
      : reader
          .list(fields['drainsIn'], ['drainsIn'])
          .map((item, index) => readBeside(reader, item, ['drainsIn', index]));
  const pump =
    fields['pump'] === undefined
      ? undefined
      : reader.quantity('flow', fields['pump'], ['pump'], FLOW);
  reader.finish();

  const added = beside.reduce((total, one) => total.plus(one), NO_AREA);
  const volume = open.plus(added).times(rain);
  const found = {
    volume,
    depth: volume.dividedBy(open),
    pumpTime: pump === undefined ? null : volume.dividedBy(pump),
    notes: NOTES,
    cautions: cautionsFor('excavation', 'drainage'),
  };
  return withWorking(found, () => [
    {
      title: 'Water in the dig',
      formula: 'V = p (A + a)',
      given: [
        given('p', 'rain', rain),
        given('A', 'open area', open),
        given('a', 'area that drains in, reduced', added),
      ],
      result: given('V', 'water', volume),
      source: 'derived',
    },
  ]);
}

const NO_AREA = area(0, 'm2');
const NOTES: readonly string[] = Object.freeze([
  'Nobody works where water stands or gathers in a dig until a competent person has decided how.',
  'A competent person looks at the sides again after rain and before anyone goes in.',
  'Keep off wet clay, pump to where water may go, and prove the compaction again when it has dried.',
]);

function readBeside(reader: Reader, value: unknown, path: FieldPath) {
  const fields = reader.object(value, path);
  const size = reader.quantity('area', fields['area'], [...path, 'area'], AREA);
  const share = reader.number(fields['coefficient'], [...path, 'coefficient'], FRACTION);
  return size.times(share);
}
