import type { Reader } from '../../input/reader.js';
import type { PartJob } from './part-job.js';

/** Checks that the points of a marked line are apart. Internal. */
export function checkUtilities(reader: Reader, { utilities }: PartJob): void {
  utilities?.forEach((line, index) => {
    line?.path?.forEach((point, k) => {
      const before = k === 0 ? undefined : line.path?.[k - 1];
      if (point?.x === undefined || before?.x === undefined || !point.x.equals(before.x)) return;
      if (point.y === undefined || before.y === undefined || !point.y.equals(before.y)) return;
      const message = 'this point is the same as the one before it. Remove one of them';
      reader.fail('POINTS_COINCIDE', ['utilities', index, 'path', k], message);
    });
  });
}
