import { object, optional, quantity } from '../../input/field.js';
import { ELEVATION, TOLERANCE } from '../../input/ranges.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { readShape, shapeOf, type Check, type Values } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import type { JobPlan } from '../plan/plan.js';
import type { SurfaceKind } from '../plan/surfaces.js';
import {
  heightsOf,
  kindsRead,
  readingsField,
  refuseSecond,
  type JobReading,
  type JobReadingInput,
} from './check-readings.js';
import { placesOf, type Places } from './places.js';
import {
  THICKNESSES,
  TOLERANCES,
  type JobThicknessTolerances,
  type JobTolerances,
} from './tolerance-fields.js';

/** Readings of the work as built, and what they are held against. */
export interface JobReadings {
  /** Readings, one for each stake and surface, up to 10 000. */
  readonly readings: readonly JobReadingInput[];
  /** How far each kind of surface that was read may lie off the plan. */
  readonly tolerances: JobTolerances;
  /**
   * How thick a layer may be off the plan, where its top and bottom were read at one stake. Default: no
   * thickness is checked.
   */
  readonly thickness?: JobThicknessTolerances;
  /** How far a measured level may be off, either way [length], 0 to 10 m. Default: not at all. */
  readonly uncertainty?: LengthInput;
  /** Elevation of the line of sight now [length]. Default: as the plan says. */
  readonly instrumentHeight?: LengthInput;
}

/** What was read, and what it is held against. Internal. */
export interface ReadReadings extends Pick<
  Values<Shape>,
  'tolerances' | 'thickness' | 'uncertainty'
> {
  readonly readings: readonly JobReading[];
}

/** Reads the readings of a job against its plan. Internal. */
export function readJobReadings(plan: JobPlan, input: unknown): ReadReadings {
  const places = placesOf(plan);
  const planned = plan.levelling?.instrumentHeight;
  const reader = makeReader({ keepsParts: true });
  const given: unknown = isObject(input) ? input['readings'] : undefined;
  const shape = shapeFor(places, kindsRead(given, places));
  const partly = readShape(reader, input, [], shape, (_reader, read, _path, raw) => {
    refuseSecond(reader, read.readings ?? []);
    const usesRod = (read.readings ?? []).some(({ rod }) => rod !== undefined);
    if (usesRod && planned === undefined && raw['instrumentHeight'] === undefined) {
      const message = 'missing. Readings on the rod count from it';
      reader.fail('REQUIRED', ['instrumentHeight'], message);
    }
  });
  reader.finish();
  // without a fault every field is there
  const { readings, instrumentHeight, ...rest } = partly as Values<Shape>;
  const sight = instrumentHeight ?? planned;
  return { ...rest, readings: heightsOf(readings, { places, sight }) };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

type Shape = ReturnType<typeof shapeFor>;

const shapeFor = (places: Places, kinds: ReadonlySet<SurfaceKind>) =>
  shapeOf<JobReadings>()({
    readings: readingsField(places),
    tolerances: object(TOLERANCES, requireEach(kinds)),
    thickness: optional(object(THICKNESSES)),
    uncertainty: optional(quantity(TOLERANCE)),
    instrumentHeight: optional(quantity(ELEVATION)),
  });

/** Each kind of surface that was read needs its tolerance. */
const requireEach =
  (kinds: ReadonlySet<SurfaceKind>): Check<typeof TOLERANCES> =>
  (reader: Reader, _read, path, raw) => {
    for (const kind of kinds) {
      if (raw[kind] !== undefined) continue;
      const message = `missing. Say how far the ${kind} may lie off the plan`;
      reader.fail('REQUIRED', [...path, kind], message);
    }
  };
