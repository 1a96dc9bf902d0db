// The table of the fields of a plan is made from the declarations, and is up to date.
import { expect, test } from 'vitest';
import { PLAN_SHAPE } from '../../../src/job/saved/plan-shape.js';
import { planShape } from '../../../.config/write-plan-shape.mjs';

test('the shape of a plan is that of its declarations: npm run plan-shape', () => {
  expect(PLAN_SHAPE).toEqual(planShape());
});
