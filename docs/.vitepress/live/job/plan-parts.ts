import type { JobPlan } from 'settline/job';
import { isQuantity, type AnyQuantity } from 'settline/units';
import { nameInWords } from '../page/both-systems.js';
import type { Path } from '../page/json-text.js';

/** A figure of a plan: where it stands, and its value. */
export interface Figure {
  readonly path: Path;
  readonly name: string;
  readonly value: AnyQuantity;
}

/** A part of a plan with its figures. */
export interface PlanPart {
  readonly name: string;
  /** What the working calls it. */
  readonly subject: string;
  readonly figures: readonly Figure[];
}

/** Points of outlines and the like: what a crew does not ask about. */
const LEFT_OUT = new Set(['digOutline', 'digArcs', 'digHoles', 'outline', 'top', 'rings', 'job']);

function nameOf(step: string | number, parent: unknown): string {
  if (typeof step === 'string') return nameInWords(step);
  const entry: unknown = Array.isArray(parent) ? parent[step] : undefined;
  if (typeof entry === 'object' && entry !== null) {
    const { id, surface, name } = entry as Record<string, unknown>;
    const label = [id, surface, name].find((one) => typeof one === 'string');
    if (label !== undefined) return label;
  }
  return `${step + 1}`;
}

function figuresIn(value: unknown, path: Path, words: readonly string[]): Figure[] {
  if (isQuantity(value)) return [{ path, name: words.join(', '), value }];
  if (typeof value !== 'object' || value === null) return [];
  const entries = Array.isArray(value)
    ? value.map((one, index): [number, unknown] => [index, one])
    : Object.entries(value).filter(([name]) => !LEFT_OUT.has(name));
  return entries.flatMap(([step, one]) =>
    figuresIn(one, [...path, step], [...words, nameOf(step, value)]),
  );
}

/** The parts of a plan, each with the figures in it. */
export function partsOf(plan: JobPlan): readonly PlanPart[] {
  const pavements = plan.pavements.map((pavement, index) => ({
    name: pavement.name,
    subject: pavement.name,
    figures: figuresIn(pavement, ['pavements', index], []),
  }));
  const strings = plan.stringLines.map((line, index) => ({
    name: `String ${line.id}`,
    subject: `String ${line.id}`,
    figures: figuresIn(line, ['stringLines', index], []),
  }));
  const totals = {
    name: 'Totals',
    subject: 'Loads',
    figures: figuresIn(plan.totals, ['totals'], []),
  };
  return [...pavements, ...strings, totals].filter(({ figures }) => figures.length > 0);
}
