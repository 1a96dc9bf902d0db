import type { Reader } from '../../input/reader.js';
import { isLeftOut } from '../../input/shape.js';
import { type PartJob } from './part-job.js';
import { requireId } from './unknown-id.js';

/** Checks that old paving has either an outline or the pavement whose dig contains it. Internal. */
export function checkOldPaving(reader: Reader, { oldPaving, pavements }: PartJob): void {
  oldPaving?.forEach((old, index) => {
    if (old === undefined) return;
    const path = ['oldPaving', index];
    if (isLeftOut(old, 'outline') && isLeftOut(old, 'pavement')) {
      reader.fail(
        'REQUIRED',
        path,
        'missing. Give the outline of the old paving, or the pavement whose dig contains it',
      );
    }
    if (old.outline !== undefined && old.pavement !== undefined) {
      reader.fail('CONFLICTING_FIELDS', path, 'give only one of outline and pavement', {
        choices: 'outline, pavement',
      });
    }
    if (old.share !== undefined && old.outline !== undefined) {
      const message = 'old paving with an outline has no share of the dig. Remove one of them';
      reader.fail('CONFLICTING_FIELDS', [...path, 'share'], message);
    }
    const ids = pavements?.map((pavement) => pavement?.id) ?? [];
    if (old.pavement === undefined || ids.length === 0) return;
    requireId(reader, [...path, 'pavement'], { what: 'pavement', id: old.pavement, ids });
  });
}
