import { checkLevels, describeCheckMove, type CheckLevelsOptions } from 'settline/checks';
import { attempt } from 'settline/errors';
import { entry, shownResult, type Block } from '../block/block.js';

export const block: Block = {
  title: 'Levels as built',
  calls: ['checkLevels', 'describeCheckMove'],
  fields: [
    entry('layer', 'Layer'),
    {
      kind: 'rows',
      path: ['readings'],
      label: 'Readings',
      one: 'reading',
      columns: [entry('id', 'where'), entry('plan', 'plan'), entry('measured', 'measured')],
      fresh: (index) => ({ id: `P${index + 1}`, plan: '100 ft', measured: '100 ft' }),
    },
    entry(['tolerance', 'over'], 'Allowed above the plan'),
    entry(['tolerance', 'under'], 'Allowed below the plan'),
    entry('uncertainty', 'Uncertainty of a reading', { isOptional: true, hint: 'empty: 0' }),
  ],
  options: {
    layer: 'base',
    readings: [
      { id: 'A', plan: '99.25 ft', measured: '99.26 ft' },
      { id: 'B', plan: '99.10 ft', measured: '99.06 ft' },
      { id: 'C', plan: '98.95 ft', measured: '98.98 ft' },
    ],
    tolerance: { over: '1/4 in', under: '3/8 in' },
    uncertainty: '1/16 in',
  },
  run: (options) =>
    attempt(() => {
      const check = checkLevels(options as unknown as CheckLevelsOptions);
      const moves = check.outOfTolerance.flatMap(({ id, move }) =>
        move === null
          ? []
          : [
              `${id}: ${describeCheckMove(move, { as: 'in' })} (${describeCheckMove(move, { as: 'mm' })}).`,
            ],
      );
      const readings = check.readings.map(({ move, ...reading }) => ({
        ...reading,
        move: move === null ? null : describeCheckMove(move, { as: 'in' }),
      }));
      const answer = [check.note, ...moves].join(' ');
      const shown = shownResult(check, answer);
      const { verdict, limits } = check;
      return { ...shown, notes: [], result: { verdict, limits, readings } };
    }),
};
