import { capital } from '../../../capital.js';
import { entry } from '../../../invariant.js';
import type { RemovedPaving } from '../../../site/old-paving/old-paving.js';
import { OLD_PAVING_WEIGHTS } from '../../../sources/material-weights.js';
import type { Area } from '../../../units/quantity.js';
import { formulaStep, given, published } from '../../../working.js';
import { done, place, placeBy, take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { LaidOldPaving } from '../plan-old-paving.js';

/** The area of old paving in a dig: a share of it, or the part inside its outline. Internal. */
export function oldAreaStep(
  { old, outline, share, path }: LaidOldPaving,
  { name, area, dig }: { readonly name: string; readonly area: Area; readonly dig: Taken },
  gives: PlacedStep['paths'] = [],
): PlacedStep {
  const title = capital(name);
  const result = given('a', name, area);
  if (outline === null) {
    const isShare = old.share !== undefined;
    const part = take('s', 'share of the dig', Number(share), ['job', ...path, 'share']);
    return worked({
      title,
      formula: isShare ? 'a = A * s' : 'a = A',
      takes: isShare ? [dig, part] : [dig],
      result,
      gives,
    });
  }
  return done({
    title,
    procedure: 'planJob',
    method:
      'Cuts the outline of the old paving with the dig line, and returns the area inside both.',
    takes: [dig],
    result,
    gives,
  });
}

/** The working of a piece of old paving in a dig. Internal. */
export function oldPavingSteps({
  one,
  removed,
  index,
  dig,
}: {
  readonly one: LaidOldPaving;
  readonly removed: RemovedPaving;
  /** Its number among the pieces of the plan. */
  readonly index: number;
  /** Area of dig that is counted with the pavement. */
  readonly dig: Area;
}): PlacedStep[] {
  const layer = entry(removed.layers, 0);
  const at = (...fields: string[]) => [['oldPaving', index, ...fields]];
  const { inPlaceDensity } = layer;
  const { material } = one.old;
  const row = OLD_PAVING_WEIGHTS[material].inPlace;
  const density =
    one.old.density === undefined
      ? [
          place(
            formulaStep({
              title: `Density of old ${material}`,
              formula: 'd = p',
              given: [
                published('p', `density of old ${material} in place`, inPlaceDensity, row.source),
              ],
              result: given('d', `density of old ${material} in place`, inPlaceDensity),
              source: row.source,
            }),
            at('density'),
          ),
        ]
      : [];
  const name = `area of old ${material}, piece ${index + 1}`;
  const counted = take('A', 'area of dig counted here', dig, ['areas', 'ownDig']);
  return [
    ...density,
    oldAreaStep(one, { name, area: layer.area, dig: counted }, at('area')),
    ...placeBy(
      removed.working,
      { V: at('inPlace'), M: at('mass'), L: at('loose', 'volume') },
      {
        A: at('area'),
        o: [['job', ...one.path, 'thickness']],
        d: at('density'),
        V: at('inPlace'),
        M: at('mass'),
      },
    ),
  ];
}
