import { object, optional, quantity } from '../../input/field.js';
import { ELEVATION, TOLERANCE } from '../../input/ranges.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { readShape, shapeOf, type Check, type Values } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import type { JobPlan } from '../plan/plan.js';
import type { SurfaceKind } from '../plan/surface-kind.js';
import {
  heightsOf,
  kindsRead,
  readingsField,
  refuseSecond,
  type JobReading,
  type JobReadingInput,
} from './check-readings.js';
import { PLACED, placedFields, refuseSecondPlace } from './placed-fields.js';
import type { JobPlacedReadings } from './placed-input.js';
import type { PlacedReading } from './placed-readings.js';
import { placesOf, type Places } from './places.js';
import {
  THICKNESSES,
  TOLERANCES,
  type JobThicknessTolerances,
  type JobTolerances,
} from './tolerance-fields.js';

/** Readings of the work as built, and what they are checked against: one list of them or more. */
export interface JobReadings extends JobPlacedReadings {
  /** Levels at the stakes, one for each stake and surface, up to 10 000. Default: none. */
  readonly readings?: readonly JobReadingInput[];
  /** How far each kind of surface whose level was read may lie off the plan. Default: none. */
  readonly tolerances?: JobTolerances;
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

/** What was read, and what it is checked against. Internal. */
export interface ReadReadings extends Pick<Values<Shape>, 'thickness' | 'uncertainty'> {
  readonly readings: readonly JobReading[];
  readonly tolerances: Values<typeof TOLERANCES> | undefined;
  /** Checks between the stakes. */
  readonly placed: readonly PlacedReading[];
}

/** Reads the readings of a job against its plan. Internal. */
export function readJobReadings(plan: JobPlan, input: unknown): ReadReadings {
  const places = placesOf(plan);
  const planned = plan.levelling?.instrumentHeight;
  const reader = makeReader({ keepsParts: true });
  const given: unknown = isObject(input) ? input['readings'] : undefined;
  const kinds = kindsRead(given, places);
  const shape = shapeFor(plan, places, kinds);
  const partly = readShape(reader, input, [], shape, (_reader, read, path, raw) => {
    requireOneList(reader, raw);
    refuseSecond(reader, read.readings ?? [], places);
    for (const name of PLACED) refuseSecondPlace(reader, read[name] ?? [], [name]);
    if (raw['tolerances'] === undefined) {
      requireEach(kinds)(reader, {}, [...path, 'tolerances'], {});
    }
    const usesRod = (read.readings ?? []).some(({ rod }) => rod !== undefined);
    if (usesRod && planned === undefined && raw['instrumentHeight'] === undefined) {
      const message = 'missing. Readings on the rod count from it';
      reader.fail('REQUIRED', ['instrumentHeight'], message);
    }
  });
  reader.finish();
  // without a fault every field is there
  const { readings = [], instrumentHeight, ...rest } = partly as Values<Shape>;
  const sight = instrumentHeight ?? planned;
  const { tolerances, thickness, uncertainty } = rest;
  return {
    readings: heightsOf(readings, { places, sight }),
    placed: PLACED.flatMap((name) => rest[name] ?? []).filter((one) => one !== null),
    tolerances,
    thickness,
    uncertainty,
  };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

function requireOneList(reader: Reader, raw: Readonly<Record<string, unknown>>): void {
  const lists = ['readings', ...PLACED];
  if (lists.some((name) => raw[name] !== undefined)) return;
  const message = `missing. Give at least one list: ${lists.join(', ')}`;
  reader.fail('REQUIRED', ['readings'], message, { choices: lists.join(', ') });
}

type Shape = ReturnType<typeof shapeFor>;

const shapeFor = (plan: JobPlan, places: Places, kinds: ReadonlySet<SurfaceKind>) =>
  shapeOf<JobReadings>()({
    readings: optional(readingsField(places)),
    tolerances: optional(object(TOLERANCES, requireEach(kinds))),
    thickness: optional(object(THICKNESSES)),
    uncertainty: optional(quantity(TOLERANCE)),
    instrumentHeight: optional(quantity(ELEVATION)),
    ...placedFields(new Map(plan.pavements.map((pavement) => [pavement.id, pavement]))),
  });

/** Each kind of surface whose level was read needs its tolerance. */
const requireEach =
  (kinds: ReadonlySet<SurfaceKind>): Check<typeof TOLERANCES> =>
  (reader: Reader, _read, path, raw) => {
    for (const kind of kinds) {
      if (raw[kind] !== undefined) continue;
      const message = `missing. Say how far the ${kind} may lie off the plan`;
      reader.fail('REQUIRED', [...path, kind], message);
    }
  };
