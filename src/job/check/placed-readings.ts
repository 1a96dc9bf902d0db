import { attempt } from '../../attempt.js';
import type { FieldPath, Issue } from '../../errors.js';
import { custom } from '../../input/field.js';
import type { Reader } from '../../input/reader.js';
import { readShape, type Field, type Shape } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { PavementPlan } from '../plan/plan.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';
import type { SurfaceKind } from '../plan/surface-kind.js';
import type { PlacedCheck, PlacedCheckResult } from './placed-check.js';

/** A check that has been made, and its pavement. Internal. */
export interface PlacedReading extends PlacedCheck {
  readonly pavement: PavementPlan;
}

/** The pavements of a plan by their ids. Internal. */
export type Pavements = ReadonlyMap<string, PavementPlan>;

/** How readings of one kind are read and checked. Internal. */
export interface PlacedKind {
  /** Its fields; those of the check are passed on as given. */
  readonly shape: Shape;
  /** Runs the check on the fields that it takes. */
  readonly check: (given: object, kind: SurfaceKind) => PlacedCheckResult;
  /** Fields of the check that have another name here. */
  readonly names?: Readonly<Record<string, string>>;
}

type Given = Readonly<Record<string, unknown>>;

/** Readings in one place, as the check that they give. Internal. */
export const placedField = (
  pavements: Pavements,
  { shape, check, names = {} }: PlacedKind,
): Field<PlacedReading | null> =>
  custom((reader, value, path) => {
    let given: Given | undefined;
    const read: Given = readShape(reader, value, path, shape, (_reader, _read, _path, raw) => {
      given = raw;
    });
    if (given === undefined) return null;
    const { pavement: id, place, surface, ...rest } = read;
    const pavement = pavementOf(reader, pavements, { id, path });
    const planned = surfaceOf(reader, pavement, {
      surface,
      isNamed: 'surface' in shape,
      path: [...path, 'surface'],
    });
    const outcome = attempt(() => check(rest, planned?.kind ?? 'base'));
    if (!outcome.ok) {
      report(reader, outcome.errors, { given, isKnown: planned !== undefined, path, names });
      return null;
    }
    if (pavement === undefined || planned === undefined || typeof place !== 'string') return null;
    const { surface: name, kind } = planned;
    return { pavement, place, surface: name, kind, check: outcome.value };
  });

function pavementOf(
  reader: Reader,
  pavements: Pavements,
  { id, path }: { readonly id: unknown; readonly path: FieldPath },
): PavementPlan | undefined {
  if (typeof id !== 'string') return undefined;
  const found = pavements.get(id);
  if (found === undefined) {
    const message = `no pavement has the id ${shown(id)}. Use ${[...pavements.keys()].join(' or ')}`;
    reader.fail('UNKNOWN_ID', [...path, 'pavement'], message, { id });
  }
  return found;
}

/** The surface that is named, or else the finished one. */
function surfaceOf(
  reader: Reader,
  pavement: PavementPlan | undefined,
  {
    surface,
    isNamed,
    path,
  }: { readonly surface: unknown; readonly isNamed: boolean; readonly path: FieldPath },
): PlannedSurface | undefined {
  if (pavement === undefined) return undefined;
  const surfaces = surfacesBelow(pavement);
  if (!isNamed) return surfaces[0];
  if (typeof surface !== 'string') return undefined;
  const found = surfaces.find((one) => one.surface === surface);
  if (found === undefined) {
    const choices = surfaces.map((one) => one.surface).join(', ');
    const message = `${shown(surface)} is not one of ${choices}`;
    reader.fail('UNKNOWN_CHOICE', path, message, { choices });
  }
  return found;
}

/** Reports the faults of a check at their fields; what was reported before is left out. */
function report(
  reader: Reader,
  issues: readonly Issue[],
  {
    given,
    isKnown,
    path,
    names,
  }: {
    readonly given: Given;
    /** True where the surface is known, and with it what limits it. */
    readonly isKnown: boolean;
    readonly path: FieldPath;
    readonly names: Readonly<Record<string, string>>;
  },
): void {
  for (const { path: at, code, message, params } of issues) {
    const [field, ...inner] = at;
    const name = names[String(field)] ?? field;
    const isMisspelt = at.length === 1 && code === 'REQUIRED' && given[String(name)] !== undefined;
    const isOfSurface = code === 'LIMIT_NOT_SET' && !isKnown;
    const isMissing = name === 'tolerance' && given['tolerance'] === undefined;
    if (isMisspelt || isOfSurface || isMissing) continue;
    const place = name === undefined ? path : [...path, name, ...inner];
    reader.fail(code, place, message, params);
  }
}
