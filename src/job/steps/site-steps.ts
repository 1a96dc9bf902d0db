import type { PavementPlan } from '../plan/plan.js';
import { condition, makeStep, type StepBasis } from './step-basis.js';
import type { WorkFigure, WorkStep } from './work-step.js';

/** Locating marked lines: nothing goes into the ground before, stakes included. Internal. */
export function locateLines(basis: StepBasis): WorkStep {
  const count = basis.job.utilities?.length ?? 0;
  return makeStep(basis, null, {
    kind: 'locate-lines',
    title: 'Locate and mark buried lines',
    figures: count === 0 ? [] : [{ code: 'count', name: 'marked lines in the job', value: count }],
    notes: [
      count === 0
        ? 'The job lists no marked line. That does not mean that there are none.'
        : 'Compare the marks on the ground with the lines of the job. Add any that the job does not list and plan again.',
      'Private lines (garden, gate, irrigation) are marked by their owner or not at all. Ask.',
    ],
    holdPoints: [
      {
        code: 'lines-located',
        who: 'crew leader',
        surface: null,
        note: 'All buried lines are located and marked, and the notice period is over.',
      },
    ],
    cautions: ['utilities'],
  });
}

/** Setting stakes and strings, and checking them. Internal. */
export function setStrings(basis: StepBasis): WorkStep {
  const { stringLines } = basis.plan;
  const stakes = new Set(stringLines.flatMap((line) => line.stakes.map(({ id }) => id)));
  return makeStep(basis, null, {
    kind: 'set-strings',
    title: 'Set stakes and strings, and check them',
    figures: [
      { code: 'count', name: 'stakes', value: stakes.size },
      ...stringLines.flatMap(({ id, stringHeight, moves }): WorkFigure[] => [
        {
          code: 'string-height',
          name: `string ${id} above finished grade`,
          value: stringHeight,
        },
        ...moves.map((move): WorkFigure => ({
          code: 'stake-move',
          name: `string ${id}: move ${move.id} ${move.direction}`,
          value: move.distance,
        })),
      ]),
    ],
    notes: ['Check the line and height of every stake each morning, and after any knock.'],
  });
}

/** Marking the dig line of a pavement. Internal. */
export function markDig(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const { edges, areas, nearby, name } = pavement;
  const { setOutStep } = basis.job;
  const cutTrees = nearby.trees.filter(({ zone }) => zone.cut !== null && !zone.cut.area.isZero());
  return makeStep(basis, pavement, {
    kind: 'mark-dig',
    title: `Mark the dig (${name})`,
    before: [
      condition('STAKES_IN_LINE', 'Every stake is in line and at the right height.'),
      ...(cutTrees.length === 0
        ? []
        : [
            condition(
              'TREES_AGREED',
              `The authority and an arborist agree to the dig at these trees: ${cutTrees.map(({ id }) => id).join(', ')}.`,
            ),
          ]),
    ],
    figures: [
      ...edges.map(({ edge, top }): WorkFigure => ({
        code: 'dig-line',
        name: `edge ${edge}: dig line outside the paving`,
        value: top,
      })),
      ...(setOutStep === undefined
        ? []
        : [{ code: 'set-out-step', name: 'rounded up to steps of', value: setOutStep } as const]),
      { code: 'dig-area', name: 'dig at the bottom', value: areas.dig },
    ],
    cautions: cutTrees.length === 0 ? [] : ['trees'],
  });
}
