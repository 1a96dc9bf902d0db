import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import type {
  AreaInput,
  DensityInput,
  LengthInput,
  MassInput,
  TimeInput,
} from '../../units/construct.js';
import type { Area } from '../../units/quantity.js';
import { DENSITY } from '../../volumes/limits.js';
import { given, withWorking, type Worked } from '../../working.js';
import { AREA, DEPTH, FRACTION, MASS, TIME } from '../limits.js';

/** How much of a dig can be closed with stone before the day or the weather ends. */
export interface ClosableArea extends Worked {
  /** The lesser of the two: open no more than this. */
  readonly area: Area;
  readonly byStone: Area;
  /** Null where no crew was given. */
  readonly byCrew: Area | null;
  readonly limitedBy: 'stone' | 'crew';
  readonly cautions: readonly Caution[];
}

/**
 * Open area that can be closed today: `by stone = dry stone on site / (thickness x dry density)`,
 * `by crew = area a crew closes in a time x time left`, and the lesser of the two.
 *
 * @param options.stone - stone on site, as delivered [mass]
 * @param options.moisture - its water over dry mass, a fraction 0 to 1; no default
 * @param options.thickness - compacted thickness that closes the dig [length]
 * @param options.compactedDryDensity - in place, dry [density]
 * @param options.crew - `area` that the crew closes in a `time`, and `timeLeft`
 * @returns area by stone, by crew, the lesser and which it is; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const today = closableArea({
 *   stone: '14 t',
 *   moisture: 0,
 *   thickness: '0.2 m',
 *   compactedDryDensity: '2.15 t/m3',
 *   crew: { area: '12 m2', time: '1 h', timeLeft: '3 h' },
 * });
 * today.area.to('m2').toFixed(1) //=> '32.6'
 * today.limitedBy //=> 'stone'
 */
export function closableArea(options: {
  readonly stone: MassInput;
  readonly moisture: number | string;
  readonly thickness: LengthInput;
  readonly compactedDryDensity: DensityInput;
  readonly crew?: {
    readonly area: AreaInput;
    readonly time: TimeInput;
    readonly timeLeft: TimeInput;
  };
}): ClosableArea {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const stone = reader.quantity('mass', fields['stone'], ['stone'], MASS);
  const moisture = reader.number(fields['moisture'], ['moisture'], FRACTION);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], DEPTH);
  const density = reader.quantity(
    'density',
    fields['compactedDryDensity'],
    ['compactedDryDensity'],
    DENSITY,
  );
  const byCrew = fields['crew'] === undefined ? null : readCrew(reader, fields['crew'], ['crew']);
  reader.finish();

  const dry = stone.dividedBy(moisture.plus(1));
  const byStone = dry.dividedBy(density).dividedBy(thickness);
  const crewDecides = byCrew !== null && byCrew.compare(byStone) < 0;
  const found = {
    area: crewDecides ? byCrew : byStone,
    byStone,
    byCrew,
    limitedBy: crewDecides ? 'crew' : 'stone',
    cautions: cautionsFor('excavation', 'drainage'),
  } as const;
  return withWorking(found, () => [
    {
      title: 'Area that the stone on site closes',
      formula: 'A = M / ((1 + w) t d)',
      given: [
        given('M', 'stone on site', stone),
        given('w', 'moisture of dry mass', moisture),
        given('t', 'thickness', thickness),
        given('d', 'dry density in place', density),
      ],
      result: given('A', 'area by stone', byStone),
      source: 'derived',
    },
  ]);
}

function readCrew(reader: Reader, value: unknown, path: FieldPath): Area | null {
  const fields = reader.object(value, path);
  const closed = reader.quantity('area', fields['area'], [...path, 'area'], AREA);
  const time = reader.quantity('time', fields['time'], [...path, 'time'], TIME);
  const left = reader.quantity('time', fields['timeLeft'], [...path, 'timeLeft'], TIME);
  // a stand-in after a fault may be zero
  return time.isZero() ? null : closed.times(left.dividedBy(time));
}
