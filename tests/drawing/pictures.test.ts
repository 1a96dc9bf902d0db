import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawPlan, drawSection } from 'settline/drawing';
import { planJob } from 'settline/job';
import { expect, test } from 'vitest';
import { PICTURES, picturesWith } from '../../.config/draw-pictures.mjs';

test('the pictures of the README are those that are drawn now (else: npm run pictures)', () => {
  const pictures = Object.entries(picturesWith({ planJob, drawPlan, drawSection }));
  expect(pictures).toHaveLength(2);
  for (const [name, svg] of pictures) expect(readFileSync(join(PICTURES, name), 'utf8')).toBe(svg);
});
