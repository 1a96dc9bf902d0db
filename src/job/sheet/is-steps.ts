import { isPlain } from '../../input/plain.js';
import { SOURCES } from '../../sources/catalogue.js';
import type { Step } from '../../working.js';
import { isSound } from './is-measure.js';

/** A step of working, with what it is about where it stands in a plan. */
export type SubjectStep = Step & {
  /** The pavement, string or part of the job. */
  readonly subject?: string;
};

const MOST_STEPS = 100_000;

/** True for the working of a result. Internal. */
export const isSteps = (value: unknown): value is readonly SubjectStep[] => isListOf(value, isStep);

function isStep(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { subject, title, given, result, source } = value;
  return (
    hasKind(value) &&
    (subject === undefined || typeof subject === 'string') &&
    typeof title === 'string' &&
    isListOf(given, isStepInput) &&
    isStepInput(result) &&
    typeof source === 'string' &&
    Object.hasOwn(SOURCES, source)
  );
}

const hasKind = ({ kind, formula, procedure, method }: Record<string, unknown>): boolean =>
  kind === 'formula'
    ? typeof formula === 'string'
    : kind === 'procedure' && typeof procedure === 'string' && typeof method === 'string';

const isStepInput = (value: unknown): boolean =>
  isPlain(value) &&
  typeof value['symbol'] === 'string' &&
  typeof value['name'] === 'string' &&
  isStepValue(value['value']);

const isStepValue = (value: unknown): boolean => isStepItem(value) || isListOf(value, isStepItem);

const isStepItem = (value: unknown): boolean =>
  typeof value === 'string' || Number.isFinite(value) || isSound(value);

const isListOf = (value: unknown, isOne: (one: unknown) => boolean): boolean =>
  Array.isArray(value) && value.length <= MOST_STEPS && Array.from(value).every(isOne);
