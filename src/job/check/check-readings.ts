import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { exactlyOne } from '../../input/exactly-one.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { JobPlan, PavementPlan, StakePlan, StringLinePlan } from '../plan/plan.js';
import { ELEVATION, LEVEL_DIFFERENCE, ROD_READING } from '../../input/ranges.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';

/** One reading of the work as built: on a surface, at a stake, by string, rod or elevation. */
export interface JobReadingInput {
  /** Id of the stake. */
  readonly stake: string;
  /** As the plan names it: `subgrade`, `lift 1 top`, `base top`, `bedding top`, `finished grade`. */
  readonly surface: string;
  /** Measured from the string straight down. */
  readonly belowString?: LengthInput;
  /** Read on the rod, under the height of instrument. */
  readonly rod?: LengthInput;
  /** Elevation of the surface [length]; or give `belowString` or `rod`. */
  readonly elevation?: LengthInput;
}

/** A reading that has been read. Internal. */
export interface JobReading {
  readonly stake: StakePlan;
  readonly line: StringLinePlan;
  readonly pavement: PavementPlan;
  readonly surface: PlannedSurface;
  /** Above finished grade: negative below it. */
  readonly height: Length;
}

/** Reads the readings of a job against its plan. Internal. */
export function readReadings(
  reader: Reader,
  plan: JobPlan,
  fields: Readonly<Record<string, unknown>>,
): JobReading[] {
  const sight =
    fields['instrumentHeight'] === undefined
      ? plan.levelling?.instrumentHeight
      : reader.quantity('length', fields['instrumentHeight'], ['instrumentHeight'], ELEVATION);
  const stakes = stakesOf(plan);
  const seen = new Set<string>();
  return reader.list(fields['readings'], ['readings']).flatMap((item, index) => {
    const path = ['readings', index];
    const row = reader.object(item, path);
    const place = findPlace(reader, row, { stakes, path });
    if (place === undefined) return [];
    const key = JSON.stringify([place.stake.id, place.surface.surface]);
    if (seen.has(key)) {
      const why = `${place.stake.id} has two readings on ${place.surface.surface}: keep the last`;
      reader.fail('DUPLICATE_ID', path, why);
    }
    seen.add(key);
    const height = heightOf(reader, row, { place, path, sight });
    return height === undefined ? [] : [{ ...place, height }];
  });
}

type Place = Omit<JobReading, 'height'>;
type Stakes = ReadonlyMap<string, Omit<Place, 'surface'>>;

function stakesOf({ pavements, stringLines }: JobPlan): Stakes {
  const byId = new Map(pavements.map((pavement) => [pavement.id, pavement]));
  return new Map(
    stringLines.flatMap((line) => {
      const pavement = byId.get(line.pavement);
      if (pavement === undefined) return [];
      return line.stakes.map((stake) => [stake.id, { stake, line, pavement }] as const);
    }),
  );
}

function findPlace(
  reader: Reader,
  row: Readonly<Record<string, unknown>>,
  { stakes, path }: { readonly stakes: Stakes; readonly path: FieldPath },
): Place | undefined {
  const id = reader.text(row['stake'], [...path, 'stake']);
  const name = reader.text(row['surface'], [...path, 'surface']);
  const found = stakes.get(id);
  if (found === undefined) {
    if (id !== '') {
      const why = `there is no stake ${JSON.stringify(id)} in the plan`;
      reader.fail('UNKNOWN_ID', [...path, 'stake'], why, { id });
    }
    return undefined;
  }
  const surfaces = surfacesBelow(found.pavement);
  const surface = surfaces.find((one) => one.surface === name);
  if (surface === undefined && name !== '') {
    const choices = surfaces.map((one) => one.surface).join(', ');
    const why = `${JSON.stringify(name)} is not among: ${choices}`;
    reader.fail('UNKNOWN_CHOICE', [...path, 'surface'], why, { choices });
  }
  return surface === undefined ? undefined : { ...found, surface };
}

/** Height of a reading above finished grade at its stake. */
function heightOf(
  reader: Reader,
  row: Readonly<Record<string, unknown>>,
  {
    place,
    path,
    sight,
  }: { readonly place: Place; readonly path: FieldPath; readonly sight: Length | undefined },
): Length | undefined {
  const how = exactlyOne(reader, row, ['belowString', 'rod', 'elevation'], path);
  if (how === undefined) return undefined;
  const { stake, line } = place;
  if (how === 'belowString') {
    const at = [...path, how];
    return line.stringHeight.minus(reader.quantity('length', row[how], at, LEVEL_DIFFERENCE));
  }
  const finish = stake.finishElevation;
  if (finish === null) {
    const why = `finished grade at ${stake.id} has no elevation in the plan: measure below the string`;
    reader.fail('REQUIRED', [...path, 'belowString'], why);
    return undefined;
  }
  if (how === 'elevation') {
    return reader.quantity('length', row[how], [...path, how], ELEVATION).minus(finish);
  }
  if (sight === undefined) {
    const why = 'is missing: rod readings count from it';
    reader.fail('REQUIRED', ['instrumentHeight'], why);
    return undefined;
  }
  return sight
    .minus(reader.quantity('length', row[how], [...path, how], ROD_READING))
    .minus(finish);
}
