import type { CautionId } from '../../sources/cautions.js';

/** What decides which cautions a plan has: a job as read, or the job in a plan. */
interface CautionedJob {
  readonly oldPaving?: readonly unknown[] | undefined;
  readonly levelling?: unknown;
  readonly ground?: unknown;
  readonly materials: {
    readonly pavers?: readonly { readonly pattern?: string | undefined }[] | undefined;
  };
}

/** The cautions that the plan of a job has, in order. Internal. */
export function cautionIdsOf({
  oldPaving = [],
  levelling,
  ground,
  materials,
}: CautionedJob): CautionId[] {
  const isCut = (materials.pavers ?? []).some(({ pattern }) => pattern !== undefined);
  return [
    'utilities',
    'excavation',
    'structure',
    ...(ground === undefined ? [] : (['ground'] as const)),
    'drainage',
    'trees',
    ...(oldPaving.length > 0 ? (['dust'] as const) : []),
    ...(isCut ? (['cutting'] as const) : []),
    ...(levelling === undefined ? [] : (['laser'] as const)),
    'loads',
  ];
}
