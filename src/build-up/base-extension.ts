import { quantity } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { LEAST_BASE_EXTENSION } from '../sources/base-extension-rule.js';
import type { SourceId } from '../sources/catalogue.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { length, type LengthInput } from '../units/construct.js';
import { max } from '../units/aggregate.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, published, withWorking, type Worked } from '../working.js';

/** The base whose extension is worked out. */
export interface BaseExtensionOptions {
  /** Compacted base [length], more than 0 and at most 5 m. */
  readonly baseThickness: LengthInput;
}

const OPTIONS = shapeOf<BaseExtensionOptions>()({ baseThickness: quantity(THICKNESS) });

/** How far the base is extended past the edge restraint. */
export interface BaseExtension extends Cautioned, Worked {
  /** Distance the base extends past the edge restraint, on each open edge. */
  readonly extension: Length;
  /** Which part of the rule governs. */
  readonly governedBy: 'base-thickness' | 'least-extension';
  /** Where the rule is printed. */
  readonly sources: readonly SourceId[];
}

const LEAST = length(LEAST_BASE_EXTENSION.value, 'in');

/**
 * How far the base extends past the edge restraint: `extension = max(base thickness, 6 in)`. It
 * makes base, geotextile, dig, spoil and root-zone cut wider than the paving.
 *
 * @param options - see {@link BaseExtensionOptions}
 * @returns the extension on each open edge [length]
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source edge-restraints
 * @source paver-tolerances
 * @example
 * baseExtension({ baseThickness: '8 in' }).extension.to('in').toString() //=> '8'
 * baseExtension({ baseThickness: '4 in' }).extension.to('in').toString() //=> '6'
 */
export function baseExtension(options: BaseExtensionOptions): BaseExtension {
  const { baseThickness: base } = readOptions(options, OPTIONS);
  const extension = max([base, LEAST]);
  const governedBy = base.compare(LEAST) >= 0 ? 'base-thickness' : 'least-extension';
  const sources: readonly SourceId[] = ['edge-restraints', 'paver-tolerances'];
  const cautions = cautionsFor('utilities', 'trees');
  return withWorking({ extension, governedBy, sources, cautions } as const, () => [
    formulaStep({
      title: 'Base extended past the edge restraint',
      formula: 'x = max(t, x0)',
      given: [
        given('t', 'base thickness', base),
        published('x0', 'minimum extension', LEAST, LEAST_BASE_EXTENSION.source),
      ],
      result: given('x', 'extension', extension),
      source: governedBy === 'base-thickness' ? 'edge-restraints' : 'paver-tolerances',
    }),
  ]);
}
