import type { MinimumBuildUp } from '../../../build-up/minimum-build-up.js';
import type { BuildUp } from '../../../build-up/build-up.js';
import { formulaStep, given, published } from '../../../working.js';
import { isStone, thicknessOf, type Pavement } from '../../schema/layer-kinds.js';
import { place, placeBy, take, worked, type PlacedStep } from '../placed.js';

/** The working of a build-up: its total, each layer's bottom, and the thickness of the base. Internal. */
export function buildUpSteps(stack: BuildUp, pavement: Pavement): PlacedStep[] {
  const thicknesses = stack.layers.map((_, index) => ['given', 'layers', index, 'thickness']);
  const total = placeBy(stack.working, { D: [['buildUp', 'total']] }, { t: thicknesses });
  const base = pavement.layers.flatMap((layer, index) =>
    isStone(layer) ? [{ layer, index }] : [],
  );
  const thickness = worked({
    title: 'Thickness of the base',
    formula: 'T = sum(t)',
    takes: [
      take(
        't',
        'thickness of the stone layers',
        base.map(({ layer }) => layer.thickness),
        ...base.map(({ index }) => ['given', 'layers', index, 'thickness']),
      ),
    ],
    result: given('T', 'base thickness', thicknessOf(pavement, isStone)),
    gives: [],
  });
  return [...total, ...bottomSteps(stack), thickness];
}

/** The first layer begins at finished grade, every other at the bottom of the one above. */
function bottomSteps({ layers }: BuildUp): PlacedStep[] {
  const at = (index: number, field: string) => ['buildUp', 'layers', index, field];
  return layers.map(({ name, thickness, top, bottom }, index) => {
    const above = layers[index - 1];
    const t = take('t', `thickness of ${name}`, thickness, ['given', 'layers', index, 'thickness']);
    const d = take('d', 'top of the layer', top, at(index, 'top'));
    return worked({
      title: `Bottom of ${name} below finished grade`,
      formula: above === undefined ? 'b = t' : 'b = d + t',
      takes: above === undefined ? [t] : [d, t],
      result: given('b', `bottom of ${name}`, bottom),
      gives: [at(index, 'bottom'), ...(index === layers.length - 1 ? [] : [at(index + 1, 'top')])],
    });
  });
}

const WORDS = { clay: 'clay', 'wet-or-weak': 'wet or weak ground', frost: 'frost' } as const;

/** The working of the minimum thicknesses. Internal. */
export function minimumSteps(minimum: MinimumBuildUp): PlacedStep[] {
  const { paver, bedding, publishedBase, adjustments } = minimum;
  const printed = [
    ['paver', 'paver', paver],
    ['bedding', 'bedding', bedding],
    ['base', 'publishedBase', publishedBase],
  ] as const;
  const least = printed.map(([name, field, value]) =>
    place(
      formulaStep({
        title: `Published minimum thickness of the ${name}`,
        formula: 'm = p',
        given: [published('p', `published minimum ${name}`, value, 'paver-tolerances')],
        result: given('m', `minimum ${name}, published`, value),
        source: 'paver-tolerances',
      }),
      [['minimum', field]],
    ),
  );
  const added = adjustments.map(({ reason, added: value, source }, index) =>
    place(
      formulaStep({
        title: `Base added for ${WORDS[reason]}`,
        formula: 'm = a',
        given: [published('a', `base added for ${WORDS[reason]}`, value, source)],
        result: given('m', 'base added', value),
        source,
      }),
      [['minimum', 'adjustments', index, 'added']],
    ),
  );
  const base = placeBy(
    minimum.working,
    { b: [['minimum', 'base']] },
    {
      p: [['minimum', 'publishedBase']],
      ...Object.fromEntries(
        adjustments.map((_, index) => [
          `a${index + 1}`,
          [['minimum', 'adjustments', index, 'added']],
        ]),
      ),
    },
  );
  return [...least, ...added, ...base];
}
