import { entry, type ChoiceField, type RowsField } from './block.js';

/** The form of the corners of an outline. */
export const cornersField = (label: string): RowsField => ({
  kind: 'rows',
  path: ['outline', 'points'],
  label,
  one: 'corner',
  columns: [entry([0], 'x', { isNumber: true }), entry([1], 'y', { isNumber: true })],
  fresh: () => [0, 0],
});

/** The unit of the corners. */
export const unitField: ChoiceField = {
  kind: 'choice',
  path: ['outline', 'unit'],
  label: 'Unit of the corners',
  choices: [
    ['ft', 'feet'],
    ['m', 'metres'],
    ['in', 'inches'],
    ['mm', 'millimetres'],
  ],
};
