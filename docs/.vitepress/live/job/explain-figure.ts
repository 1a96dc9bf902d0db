import type { JobPlan, PlanStep } from 'settline/job';
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

/** Steps of working that explain a figure. */
export interface Explanation {
  /** True if the last of the steps gives just this figure. */
  readonly isExact: boolean;
  readonly steps: readonly PlanStep[];
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

/** How many words of a figure's name a title has. */
function wordsShared(title: string, name: string): number {
  const words = new Set(title.toLowerCase().split(/[^a-z\d]+/));
  return name
    .toLowerCase()
    .split(/[^a-z\d]+/)
    .filter((word) => words.has(word)).length;
}

/**
 * The working of a figure: the steps of its part that give the same value and speak of it by name; all
 * steps of the part where none does.
 */
export function explainFigure(plan: JobPlan, part: PlanPart, figure: Figure): Explanation {
  const own = plan.working.filter(({ subject }) => subject === part.subject);
  const same = own
    .filter(({ result }) => isSameValue(result.value, figure.value))
    .map((step) => ({ step, shared: wordsShared(step.title, figure.name) }));
  const most = Math.max(0, ...same.map(({ shared }) => shared));
  if (most === 0) return { isExact: false, steps: own };
  return {
    isExact: true,
    steps: same.filter(({ shared }) => shared === most).map(({ step }) => step),
  };
}

const isSameValue = (value: unknown, figure: AnyQuantity): boolean =>
  isQuantity(value) &&
  value.dimension === figure.dimension &&
  JSON.stringify(value) === JSON.stringify(figure);
