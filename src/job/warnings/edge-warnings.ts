import { edgeCount } from '../../outline/ring.js';
import { listed } from '../listed.js';
import type { PlanWarning } from '../plan/plan.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { lengthFigure } from './figures.js';
import { sharedEdges, type SharedEdge } from './shared-edges.js';
import { warning } from './warning.js';

const nameOf = ({ name, id }: Pavement): string => name ?? id;

/** Edges on which nothing is said, and pavements that meet without saying so. Internal. */
export function edgeWarnings(pavements: readonly Pavement[]): PlanWarning[] {
  const shared = sharedEdges(pavements);
  return [
    ...pavements.flatMap(unsaid),
    ...shared.filter((one) => !isSaid(one)).map(sharedWarning),
    ...pavements.flatMap((pavement) => adjoiningNothing(pavement, shared)),
  ];
}

function unsaid(pavement: Pavement): PlanWarning[] {
  const { edges, outline } = pavement;
  const count = edgeCount(outline);
  const open = Array.from({ length: count }, (_, k) => k + 1).filter(
    (edge) => (edges?.[edge - 1] ?? null) === null,
  );
  if (open.length === 0) return [];
  const named = open.length === count ? 'every edge' : namesOf(open);
  return [warning('EDGE_NOT_SAID', nameOf(pavement), { edges: named })];
}

/** `edge 2`, `edges 2 and 3`, `edges 2, 3 and 5`. */
const namesOf = (edges: readonly number[]): string =>
  `${edges.length < 2 ? 'edge' : 'edges'} ${listed(edges)}`;

const isSaid = ({ said, otherSaid }: SharedEdge): boolean =>
  said?.along === 'adjoining' && otherSaid?.along === 'adjoining';

const sharedWarning = ({ pavement, edge, other, otherEdge, stretch }: SharedEdge): PlanWarning =>
  warning('EDGES_SHARED', nameOf(pavement), {
    edge,
    other: nameOf(other),
    otherEdge,
    run: lengthFigure(stretch),
  });

function adjoiningNothing(pavement: Pavement, shared: readonly SharedEdge[]): PlanWarning[] {
  return (pavement.edges ?? []).flatMap((said, index) => {
    if (said?.along !== 'adjoining') return [];
    const edge = index + 1;
    const isMet = shared.some(
      (one) =>
        (one.pavement === pavement && one.edge === edge) ||
        (one.other === pavement && one.otherEdge === edge),
    );
    return isMet ? [] : [warning('NOTHING_ADJOINS', nameOf(pavement), { edge })];
  });
}
