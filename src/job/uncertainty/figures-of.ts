import type { FieldPath } from '../../errors.js';
import type { AnyQuantity } from '../../units/quantity.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import type { SlopePlan, StakePlan, StringLinePlan } from '../plan/plan-of-strings.js';

/** A figure that readings move. Internal. */
export interface Figure {
  readonly path: FieldPath;
  readonly subject: string;
  readonly what: string;
  readonly value: AnyQuantity;
}

/** Figures of a plan that readings move, always the same ones for jobs that differ in readings only. Internal. */
export const figuresOf = (plan: JobPlan): readonly Figure[] => [
  ...plan.pavements.flatMap((pavement, index) => ofPavement(pavement, ['pavements', index])),
  ...plan.stringLines.flatMap((line, index) => ofLine(line, ['stringLines', index])),
];

const ofPavement = ({ name, dig, earth }: PavementPlan, at: FieldPath): Figure[] => [
  { path: [...at, 'dig', 'depth'], subject: name, what: 'dig depth', value: dig.depth },
  { path: [...at, 'dig', 'soil'], subject: name, what: 'soil to dig', value: dig.soil },
  { path: [...at, 'earth', 'cut', 'volume'], subject: name, what: 'cut', value: earth.cut.volume },
  {
    path: [...at, 'earth', 'fill', 'volume'],
    subject: name,
    what: 'fill',
    value: earth.fill.volume,
  },
];

const ofLine = ({ stakes, slopes }: StringLinePlan, at: FieldPath): Figure[] => [
  ...stakes.flatMap((stake, index) => ofStake(stake, [...at, 'stakes', index])),
  ...slopes.map((slope, index) => ofSlope(slope, [...at, 'slopes', index])),
];

function ofStake({ id, dig, offset }: StakePlan, at: FieldPath): Figure[] {
  const subject = `stake ${id}`;
  const outOfLine = { path: [...at, 'offset'], subject, what: 'out of line', value: offset };
  if (dig === null) return [outOfLine];
  return [{ path: [...at, 'dig'], subject, what: 'dig depth', value: dig }, outOfLine];
}

const ofSlope = ({ from, to, slope }: SlopePlan, at: FieldPath): Figure => ({
  path: [...at, 'slope'],
  subject: `${from} to ${to}`,
  what: 'slope along the string',
  value: slope,
});
