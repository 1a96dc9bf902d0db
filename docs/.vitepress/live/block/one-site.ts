import text from '../../../../examples/cedar-court.json?raw';
import type { ChoiceField } from './block.js';

/** The job file that blocks of plans start from. */
export const SITE_FILE: string = text;

/** A pavement of that job. */
export const pavementField: ChoiceField = {
  kind: 'choice',
  path: ['pavement'],
  label: 'Pavement',
  choices: [
    ['court', 'parking court'],
    ['terrace', 'terrace'],
  ],
};
