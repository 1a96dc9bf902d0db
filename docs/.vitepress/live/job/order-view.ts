import { materialList, type Amount, type JobPlan, type MaterialLine } from 'settline/job';
import { formatFor, isQuantity, type UnitSystem } from 'settline/units';
import { nameInWords } from '../page/both-systems.js';
import { makeElement } from '../page/make-element.js';

const HEADS = ['material', 'measure', 'need', 'order', 'left over', 'packs', 'loads'] as const;

const amount = (value: Amount, system: UnitSystem): string =>
  isQuantity(value) ? formatFor(value, system) : String(value);

const cellsOf = (line: MaterialLine, system: UnitSystem): string[] => [
  nameInWords(line.measure),
  amount(line.need, system),
  amount(line.ordered, system),
  amount(line.surplus, system),
  line.packs.map(({ name, count }) => `${count} ${name}`).join(', '),
  line.loads === null ? '' : String(line.loads),
];

/** The order list of a plan as a table. */
export function orderElement(plan: JobPlan, system: UnitSystem): HTMLElement {
  const head = HEADS.map((text) => makeElement('th', { text, attributes: { scope: 'col' } }));
  const rows = materialList(plan).lines.map((line) =>
    makeElement('tr', {
      children: [
        makeElement('th', { text: line.name, attributes: { scope: 'row' } }),
        ...cellsOf(line, system).map((text) => makeElement('td', { text })),
      ],
    }),
  );
  const table = makeElement('table', {
    children: [
      makeElement('thead', { children: [makeElement('tr', { children: head })] }),
      makeElement('tbody', { children: rows }),
    ],
  });
  return makeElement('div', {
    class: 'scroll',
    attributes: { tabindex: 0, role: 'region', 'aria-label': 'order list' },
    children: [table],
  });
}
