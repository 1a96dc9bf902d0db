import type { Mass, Volume } from '../units/quantity.js';
import { ratioToDecimal, type Ratio } from '../units/ratio.js';
import { onePlus, overRatio, timesRatio } from '../units/times-ratio.js';
import { derivedStep, given, type Step } from '../working.js';
import type { DryDensity } from './dry-density.js';
import { inState } from './state-volume.js';

/** Density, moisture and waste. Internal. */
export interface Allowances {
  readonly density: DryDensity;
  readonly moisture: Ratio;
  readonly waste: Ratio;
}

/** Material for a volume in place. Internal. */
export interface Taken {
  readonly compacted: Volume;
  readonly loose: Volume;
  readonly dryMass: Mass | null;
  readonly deliveredMass: Mass | null;
}

/** Works out the material for a volume in place. Internal. */
export function workOut(compacted: Volume, { density, moisture, waste }: Allowances): Taken {
  const withWaste = timesRatio(compacted, onePlus(waste));
  const dryMass = density.compacted === null ? null : withWaste.times(density.compacted);
  return {
    compacted,
    loose: overRatio(withWaste, density.compactedPerLoose),
    dryMass,
    deliveredMass: dryMass === null ? null : timesRatio(dryMass, onePlus(moisture)),
  };
}

/** The volumes with their states. Internal. */
export const volumesOf = ({ compacted, loose }: Taken) => ({
  compacted: inState(compacted, 'compacted'),
  loose: inState(loose, 'loose'),
});

/** The working of the loose volume. Internal. */
export const volumeStep = ({ compacted, loose }: Taken, { density, waste }: Allowances): Step =>
  derivedStep({
    title: 'Loose volume',
    formula: 'Vl = Vc * (1 + q) / r',
    given: [
      given('Vc', 'compacted volume', compacted),
      given('q', 'waste', ratioToDecimal(waste)),
      given('r', 'compacted per loose', ratioToDecimal(density.compactedPerLoose)),
    ],
    result: given('Vl', 'loose volume', loose),
  });

/** The working of the mass, if there is one. Internal. */
export function massSteps(
  { compacted, deliveredMass }: Taken,
  { density, moisture, waste }: Allowances,
): Step[] {
  if (density.compacted === null || deliveredMass === null) return [];
  return [
    derivedStep({
      title: 'Delivered mass',
      formula: 'M = Vc * (1 + q) * d * (1 + w)',
      given: [
        given('Vc', 'compacted volume', compacted),
        given('q', 'waste', ratioToDecimal(waste)),
        given('d', 'dry density in place', density.compacted),
        given('w', 'moisture of dry mass', ratioToDecimal(moisture)),
      ],
      result: given('M', 'delivered mass', deliveredMass),
    }),
  ];
}
