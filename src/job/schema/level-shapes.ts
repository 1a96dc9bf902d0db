import { choice, flag, list, optional, quantity } from '../../input/field.js';
import {
  DISTANCE_OR_NONE,
  ELEVATION,
  GRADE,
  PLACE,
  ROD_LENGTH,
  ROD_READING,
  SITE_LENGTH,
  TOLERANCE,
  TOLERANCE_OF_SOME,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import type {
  JobBenchmarkInput,
  JobClosingInput,
  JobFixedLevelInput,
  JobGradeInput,
  JobLevelBookInput,
  JobLevellingInput,
  JobLevelRowInput,
  JobMisclosureRuleInput,
} from './level-input.js';
import { part } from './part.js';
import { NAME } from './name-field.js';

/** Shapes of the parts of a job about levels. Internal. */

const FIXED_LEVEL = shapeOf<JobFixedLevelInput>()({
  name: optional(NAME),
  x: quantity(PLACE),
  y: quantity(PLACE),
  elevation: optional(quantity(ELEVATION)),
  levelled: optional(NAME),
  fixed: optional(flag),
});

export const GRADE_SHAPE = shapeOf<JobGradeInput>()({
  kind: choice(['line', 'plane', 'warped']),
  levels: list(part('JobFixedLevelInput', FIXED_LEVEL), { of: 'levels', most: 200 }),
  crossSlope: optional(quantity(GRADE)),
});

const BENCHMARK = shapeOf<JobBenchmarkInput>()({
  name: optional(NAME),
  elevation: optional(quantity(ELEVATION)),
  levelled: optional(NAME),
});

const CLOSING = shapeOf<JobClosingInput>()({
  reading: quantity(ROD_READING),
  tolerance: quantity(TOLERANCE_OF_SOME),
});

export const LEVELLING = shapeOf<JobLevellingInput>()({
  benchmark: part('JobBenchmarkInput', BENCHMARK),
  backsight: quantity(ROD_READING),
  rodLength: optional(quantity(ROD_LENGTH)),
  closing: optional(part('JobClosingInput', CLOSING)),
});

const ROW = shapeOf<JobLevelRowInput>()({
  point: NAME,
  back: optional(quantity(ROD_READING)),
  intermediate: optional(quantity(ROD_READING)),
  fore: optional(quantity(ROD_READING)),
  distance: optional(quantity(DISTANCE_OR_NONE)),
});

const RULE = shapeOf<JobMisclosureRuleInput>()({
  k: quantity(TOLERANCE_OF_SOME),
  per: optional(quantity(SITE_LENGTH)),
});

export const LEVEL_BOOK = shapeOf<JobLevelBookInput>()({
  start: quantity(ELEVATION),
  rows: list(part('JobLevelRowInput', ROW), { of: 'rows', most: 2000 }),
  known: optional(quantity(ELEVATION)),
  allowable: optional(quantity(TOLERANCE)),
  rule: optional(part('JobMisclosureRuleInput', RULE)),
  adjustBy: optional(choice(['set-ups', 'distance'])),
});
