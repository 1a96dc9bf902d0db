import type { FieldPath } from '../../../errors.js';
import type { AnyQuantity, Density, Mass, Volume } from '../../../units/quantity.js';
import { given } from '../../../working.js';
import type { Loads } from '../../../volumes/loads.js';
import { placeBy, take, worked, type PlacedStep } from '../placed.js';
import type { StreamPlan } from '../plan.js';

/** A value of a pavement, and where it stands in the plan. Internal. */
export interface Part<T extends AnyQuantity | number> {
  readonly value: T;
  readonly path: FieldPath;
}

/** What all pavements have of something, added up. Internal. */
export function added(
  title: string,
  name: string,
  {
    parts,
    value,
    gives,
  }: {
    readonly parts: readonly Part<AnyQuantity | number>[];
    readonly value: AnyQuantity | number;
    readonly gives: readonly FieldPath[];
  },
): PlacedStep {
  return worked({
    title,
    formula: 'S = sum(s)',
    takes: [
      take(
        's',
        `${name} of each pavement`,
        parts.map((part) => part.value),
        ...parts.map(({ path }) => ['plan', ...path]),
      ),
    ],
    result: given('S', name, value),
    gives,
  });
}

/** Volume and mass of a stream, and its loads. Internal. */
export function streamSteps(
  what: string,
  at: FieldPath,
  {
    stream,
    loose,
    masses,
    density,
  }: {
    readonly stream: StreamPlan & { readonly loads: Loads };
    readonly loose: readonly Part<Volume>[];
    readonly masses: readonly Part<Mass>[];
    /** The published loose density; null for that of mass and volume. */
    readonly density: { readonly value: Density; readonly step: PlacedStep } | null;
  },
): PlacedStep[] {
  const { loads, mass } = stream;
  const volume = stream.loose.volume;
  const V = take('V', `loose volume of ${what}`, volume, [...at, 'loose', 'volume']);
  const M = take('M', `mass of ${what}`, mass, [...at, 'mass']);
  const weight = density?.value ?? mass.dividedBy(volume);
  const name = `loose density of ${what}`;
  const d = take('d', name, weight);
  const to = (...path: FieldPath) => [...at, 'loads', ...path];
  const v = take('v', `full load of ${what}`, loads.perLoad.volume, to('perLoad', 'volume'));
  const n = take('n', `loads of ${what}`, loads.count, to('count'));
  const heavy = (which: 'perLoad' | 'lastLoad' | 'total', words: string) =>
    worked({
      title: `Mass of ${words}, ${what}`,
      formula: 'm = V * d',
      takes: [take('V', `volume of ${words}`, loads[which].volume, to(which, 'volume')), d],
      result: given('m', `mass of ${words}, ${what}`, loads[which].mass),
      gives: [to(which, 'mass')],
    });
  return [
    added(`Loose volume of ${what}`, `loose volume of ${what}`, {
      parts: loose,
      value: volume,
      gives: [[...at, 'loose', 'volume'], to('total', 'volume')],
    }),
    added(`Mass of ${what}`, `mass of ${what}`, {
      parts: masses,
      value: mass,
      gives: [[...at, 'mass']],
    }),
    density?.step ??
      worked({
        title: `Loose density of ${what}`,
        formula: 'd = M / V',
        takes: [M, V],
        result: given('d', name, weight),
        gives: [],
      }),
    ...placeBy(
      loadsWorking(loads).map((step) => named(step, what)),
      { v: [to('perLoad', 'volume')], n: [to('count')] },
      { V: V.from, v: v.from },
    ),
    worked({
      title: `Volume of the last load of ${what}`,
      formula: 'l = V - v * (n - 1)',
      takes: [V, v, n],
      result: given('l', `volume of the last load of ${what}`, loads.lastLoad.volume),
      gives: [to('lastLoad', 'volume')],
    }),
    heavy('perLoad', 'a full load'),
    heavy('lastLoad', 'the last load'),
    heavy('total', 'all loads'),
  ];
}

const loadsWorking = (loads: Loads): readonly PlacedStep[] => loads.working;

/** The steps of loads name the material. */
const named = (step: PlacedStep, what: string): PlacedStep => ({
  ...step,
  title: `${step.title}, ${what}`,
  given: step.given.map((input) =>
    input.symbol === 'd' ? { ...input, name: `loose density of ${what}` } : input,
  ),
});
