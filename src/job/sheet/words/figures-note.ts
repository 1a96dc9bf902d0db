import { pathText } from '../../../errors.js';
import { LIBRARY_VERSION } from '../../../library-version.js';
import { listed } from '../../listed.js';
import type { JobPlan } from '../../plan/plan.js';

/** Altered figures that the sheet names. */
const MOST_NAMED = 5;

/** What the top of a sheet says of figures that were not planned from the job; else nothing. Internal. */
export function figuresNote({ figures, altered, libraryVersion }: JobPlan): string[] {
  const by = `version ${libraryVersion} of the library`;
  switch (figures) {
    case 'planned':
      return [];
    case 'unchecked':
      return [
        `FIGURES NOT CHECKED. This plan was worked out by ${by}, saved, and read back without being worked out again. A change made in between would not show. Have the plan checked against its job before you dig from it.`,
      ];
    case 'altered':
      return [
        `ALTERED PLAN. Its job gives other figures than this sheet: ${whichText(altered)}. Do not dig from this sheet. Plan the job again.`,
        ...(libraryVersion === LIBRARY_VERSION
          ? []
          : [`It was worked out by ${by}, and read by version ${LIBRARY_VERSION}.`]),
      ];
  }
}

function whichText(altered: JobPlan['altered']): string {
  const named = altered.slice(0, MOST_NAMED).map((path) => pathText(path));
  const more = altered.length - named.length;
  return listed(more > 0 ? [...named, `${more} more`] : named);
}
