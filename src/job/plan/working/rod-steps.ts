import { entry, known } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { targetSteps } from '../../../levelling/rod-targets.js';
import { given } from '../../../working.js';
import { depthPath } from './depth-path.js';
import { place, take, worked, type PlacedStep } from '../placed.js';
import { pavementAt, type StringBasis } from '../string-basis.js';

/** The elevation of each surface at a stake, and the reading on a rod that stands on it. Internal. */
export function rodSteps(of: StringBasis): PlacedStep[] {
  const { plan, planned, basis } = of;
  const { levelling } = basis;
  if (levelling === null) return [];
  return plan.stakes.flatMap(({ id, rods, finishElevation: finish }, k) => {
    if (rods === null || finish === null) return [];
    const readings = targetSteps(levelling.instrumentHeight, rods);
    const Z = take('Z', `finished grade at ${id}`, finish, ['stakes', k, 'finishElevation']);
    return rods.flatMap(({ surface, elevation }, r) => {
      const at = (field: string): FieldPath => ['stakes', k, 'rods', r, field];
      const step = entry(readings, r);
      const isString = surface === 'string';
      const depth = isString ? plan.stringHeight : finish.minus(elevation);
      const path = isString
        ? ['stringHeight']
        : pavementAt(of, 'plan', ...depthPath(planned, depth));
      return [
        worked({
          title: `Elevation of the ${surface}, stake ${id}`,
          formula: isString ? 'z = Z + h' : 'z = Z - d',
          takes: [
            Z,
            isString
              ? take('h', 'string above finished grade', depth, path)
              : take('d', 'below finished grade', depth, path),
          ],
          result: given('z', `elevation of the ${surface}`, elevation),
          gives: [at('elevation')],
        }),
        place({ ...step, title: `${step.title}, stake ${id}` }, [at('rod')], {
          HI: [['plan', 'levelling', 'instrumentHeight']],
          z: [at('elevation')],
        }),
      ];
    });
  });
}

/** The working of the sag between neighbouring stakes. Internal. */
export function sagSteps({ plan, sags }: StringBasis): PlacedStep[] {
  return sags.flatMap(({ working }, k) => {
    const [from, to] = [entry(plan.stakes, k), entry(plan.stakes, k + 1)];
    const span = known(
      entry(working, 0).given.find(({ symbol }) => symbol === 'L'),
      'span',
    );
    const name = `span from ${from.id} to ${to.id}`;
    const spans = worked({
      title: `Span from ${from.id} to ${to.id}`,
      formula: 'L = abs(s2 - s1)',
      takes: [
        take('s1', `station of ${from.id}`, from.station, ['stakes', k, 'station']),
        take('s2', `station of ${to.id}`, to.station, ['stakes', k + 1, 'station']),
      ],
      result: { ...span, name },
      gives: [],
    });
    const steps = working.map((step, n): PlacedStep =>
      place(spanNamed(step, name), n === 0 ? [['sags', k, 'sag']] : [], {
        w: [['job', 'string', 'weightPerLength']],
        H: [['job', 'string', 'tension']],
      }),
    );
    return [spans, ...steps.map((step) => onlyTaken(step))];
  });
}

const spanNamed = (step: PlacedStep, name: string): PlacedStep => ({
  ...step,
  given: step.given.map((input) => (input.symbol === 'L' ? { ...input, name } : input)),
});

/** Without the symbols that a step does not take. */
const onlyTaken = (step: PlacedStep): PlacedStep => {
  const symbols = new Set(step.given.map(({ symbol }) => symbol));
  const taken = Object.entries(known(step.takes, 'inputs')).filter(([symbol]) =>
    symbols.has(symbol),
  );
  return { ...step, takes: Object.fromEntries(taken) };
};
