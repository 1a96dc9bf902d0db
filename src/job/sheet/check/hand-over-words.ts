import type { PavementCheck } from '../../check/check-pavement.js';
import type { SurfaceKind } from '../../plan/surface-kind.js';
import type { SheetCheck } from '../words/check-words.js';

const ENGINEER = "the owner's engineer";
const OWNER = 'the owner';

/** Who decides about a deviation: common practice, no source. Internal. */
export function whoDecides(check: SheetCheck, kind: SurfaceKind): string {
  // what carries or drains is the engineer's; what only shows is the owner's
  if (check.check === 'fall') return `${ENGINEER}, within the local code`;
  if (check.check === 'lippage' && check.place !== 'pavers')
    return `${OWNER}, within the local code`;
  const isSeen = kind === 'pavers' && check.check !== 'level' && check.check !== 'compaction';
  return isSeen ? OWNER : ENGINEER;
}

const TRAFFIC: Readonly<Record<PavementCheck['use'], string>> = {
  pedestrian: 'It was planned for walking. Keep vehicles off it.',
  'residential-driveway':
    "It was planned for cars. Keep trucks off it unless the owner's engineer agrees.",
  'parking-or-residential-street':
    "It was planned for parking or a residential street. Ask the owner's engineer before heavier traffic uses it.",
};

/** Care of one pavement. Internal. */
export const careOf = ({ name, use }: PavementCheck): string => `${name}: ${TRAFFIC[use]}`;

/** Care of every paved surface: common practice, no source. Internal. */
export const CARE: readonly string[] = [
  'Keep heavy vehicles off until all joints are full and this sheet is signed.',
  'Top up the joint sand after the first weeks of use, and again where joints empty.',
  'Wash without a hard jet. It takes the sand out of the joints.',
  'Do not dig beside or lift the edging. It holds the pavers.',
  'Do not build soil or planting up against the edges that water leaves by.',
  'If pavers settle, have them lifted and the base checked. Do not fill with sand alone.',
];
