import { list, number, object, optional, quantity, choice } from '../../input/field.js';
import { AREA, RUNOFF } from '../../input/ranges.js';
import { exactlyOne } from '../../input/exactly-one.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import type { SourceId } from '../../sources/catalogue.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { RUNOFF_COEFFICIENTS, type RunoffSurface } from '../../sources/water-figures.js';
import { sum } from '../../units/aggregate.js';
import type { AreaInput } from '../../units/construct.js';
import { Decimal40, type Decimal } from '../../units/decimal.js';
import type { Area, Flow } from '../../units/quantity.js';
import {
  formulaStep,
  given,
  published,
  withWorking,
  type Step,
  type StepInput,
  type Worked,
} from '../../working.js';
import { waterRate, type WaterRate, type WaterRateInput } from './rain-rate.js';

/** Surfaces that a runoff coefficient is published for. */
const RUNOFF_SURFACES = Object.keys(RUNOFF_COEFFICIENTS) as [RunoffSurface, ...RunoffSurface[]];

/** An area that rain runs off from. */
export interface RunoffAreaInput {
  /** Plan area [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Surface, for the upper end of its range in `RUNOFF_COEFFICIENTS`. Give this or `coefficient`. */
  readonly surface?: RunoffSurface;
  /** Share of the rain that runs off, 0 to 1. Give this or `surface`. */
  readonly coefficient?: number | string;
}

const RUNOFF_AREA = shapeOf<RunoffAreaInput>()({
  area: quantity(AREA),
  surface: optional(choice(RUNOFF_SURFACES)),
  coefficient: optional(number(RUNOFF)),
});

type RunoffArea = Values<typeof RUNOFF_AREA>;

/** A list of areas that rain runs off from. Internal. */
export const runoffAreas = list(
  object(RUNOFF_AREA, (reader, _, path, raw) => {
    exactlyOne(reader, raw, ['surface', 'coefficient'], [...path, 'surface']);
  }),
  { of: 'areas', most: 1000 },
);

/** The share of the rain that runs off an area. Internal. */
export const coefficientOf = ({ surface, coefficient }: RunoffArea): Decimal =>
  coefficient ??
  new Decimal40(surface === undefined ? 1 : RUNOFF_COEFFICIENTS[surface].maximum.value);

/** What a list of areas drains: the terms of its formula, one for each source, and the inputs. */
interface ReducedAreas {
  readonly terms: readonly string[];
  readonly given: readonly StepInput[];
}

/** Areas times their shares, those of each source apart from the others. Internal. */
export function reducedAreas(areas: readonly RunoffArea[]): ReducedAreas {
  const sources = [...new Set(areas.map(sourceOf))];
  const parts = sources.map((source, index) => {
    const number = sources.length > 1 ? index + 1 : '';
    const [share, area] = [`C${number}`, `A${number}`];
    const some = areas.filter((one) => sourceOf(one) === source);
    const shares = some.map(coefficientOf);
    return {
      term: `sum(${share}[i] * ${area}[i])`,
      given: [
        source === null ? given(share, SHARES, shares) : published(share, SHARES, shares, source),
        given(area, 'areas', some.map(areaOf)),
      ],
    };
  });
  return { terms: parts.map(({ term }) => term), given: parts.flatMap((part) => part.given) };
}

const SHARES = 'shares that run off';

/** Where the share of an area is printed; null if it was given. */
const sourceOf = ({ surface }: RunoffArea): SourceId | null =>
  surface === undefined ? null : RUNOFF_COEFFICIENTS[surface].maximum.source;

const areaOf = ({ area }: { readonly area: Area }): Area => area;

/** Areas and the rain on them. */
export interface PeakRunoffOptions {
  /** Areas that drain to one point, 1 to 1000. */
  readonly areas: readonly RunoffAreaInput[];
  /** How hard it rains: depth in a time, for the storm that the place is designed for. */
  readonly rain: WaterRateInput;
}

const OPTIONS = shapeOf<PeakRunoffOptions>()({ areas: runoffAreas, rain: waterRate });

/** Runoff at its peak. */
export interface PeakRunoff extends Cautioned, Worked {
  /** Flow at the point. */
  readonly flow: Flow;
  /** All areas together. */
  readonly area: Area;
  /** Coefficient of all areas together. */
  readonly coefficient: number;
  /** Area times coefficient: what drains as if nothing soaked away. */
  readonly reducedArea: Area;
}

/**
 * Peak runoff by the rational method: `Q = sum(C A) i`, with the intensity i of a storm as long as
 * water takes from the farthest point. It is meant for small areas; for a drive that is always so.
 * An acre inch in an hour is 1.008 ft3/s; books leave that factor out.
 *
 * @param options - see {@link PeakRunoffOptions}
 * @returns flow [flow], area [area], coefficient of all, reduced area [area], cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source rational-method
 * @source runoff-table
 * @source runoff-code
 * @example
 * const storm = peakRunoff({
 *   areas: [{ area: '80 m2', coefficient: '0.85' }, { area: '40 m2', surface: 'roof-or-pavement' }],
 *   rain: { depth: '60 mm', time: '1 h' },
 * });
 * storm.flow.to('l/min').toString() //=> '100'
 * storm.coefficient.toFixed(3) //=> '0.833'
 */
export function peakRunoff(options: PeakRunoffOptions): PeakRunoff {
  const { areas, rain } = readOptions(options, OPTIONS);
  const reducedArea = sum(areas.map((one) => one.area.times(coefficientOf(one))));
  const area = sum(areas.map(areaOf));
  const flow = reducedArea.times(rain.depth).dividedBy(rain.time);
  const found = {
    flow,
    area,
    coefficient: reducedArea.dividedBy(area).toNumber(),
    reducedArea,
    cautions: cautionsFor('drainage'),
  };
  return withWorking(found, () => [runoffStep(areas, rain, flow)]);
}

function runoffStep(areas: readonly RunoffArea[], rain: WaterRate, flow: Flow): Step {
  const { terms, given: inputs } = reducedAreas(areas);
  return formulaStep({
    title: 'Peak runoff by the rational method',
    formula: `Q = ${terms.length > 1 ? `(${terms.join(' + ')})` : terms.join('')} * p / t`,
    given: [...inputs, given('p', 'depth of rain', rain.depth), given('t', 'time', rain.time)],
    result: given('Q', 'flow', flow),
    source: 'rational-method',
  });
}
