import { OLD_PAVING_WEIGHTS } from '../../sources/material-weights.js';
import { density } from '../../units/construct.js';
import type { Area } from '../../units/quantity.js';
import { inState } from '../../volumes/state-volume.js';
import { given, type Step } from '../../working.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { OldSurfacePlan } from './plan.js';

/** Volume and weight of the old paving to strip, in place and broken out. Internal. */
export function planOldSurface({ oldSurface }: Pavement, paving: Area): OldSurfacePlan | null {
  if (oldSurface === undefined) return null;
  const { material, thickness } = oldSurface;
  const area = oldSurface.area ?? paving;
  const inPlace = area.times(thickness);
  const weights = OLD_PAVING_WEIGHTS[material];
  const mass = inPlace.times(density(weights.inPlace.value, 'lb/yd3'));
  const loose = inState(mass.dividedBy(density(weights.loose.value, 'lb/yd3')), 'loose');
  return { material, thickness, area, inPlace, loose, mass };
}

/** The working of the old paving. Internal. */
export function oldSurfaceSteps(old: OldSurfacePlan | null): Step[] {
  if (old === null) return [];
  const weights = OLD_PAVING_WEIGHTS[old.material];
  return [
    {
      title: `Old ${old.material} to strip`,
      formula: 'M = A o d',
      given: [
        given('A', 'area', old.area),
        given('o', 'thickness', old.thickness),
        given('d', 'density in place', density(weights.inPlace.value, 'lb/yd3')),
      ],
      result: given('M', 'mass', old.mass),
      source: weights.inPlace.source,
    },
    {
      title: `Old ${old.material}, broken out`,
      formula: 'L = M / d',
      given: [
        given('M', 'mass', old.mass),
        given('d', 'loose density', density(weights.loose.value, 'lb/yd3')),
      ],
      result: given('L', 'loose volume', old.loose.volume),
      source: weights.loose.source,
    },
  ];
}
