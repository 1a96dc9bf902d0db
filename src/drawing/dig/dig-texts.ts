import { COMMON_TEXTS } from '../frame/common-texts.js';
import { ABOVE_TEXTS } from '../plan/plan-texts.js';

/** The English labels of a plan of depths. */
export const DIG_TEXTS = {
  ...COMMON_TEXTS,
  ...ABOVE_TEXTS,
  'dig-title': 'Depth of dig, {pavement}',
  'dig-below-surface-us':
    'In inches, from the existing surface, old paving included, down to the subgrade. A minus sign means fill.',
  'dig-below-surface-metric':
    'In millimetres, from the existing surface, old paving included, down to the subgrade. A minus sign means fill.',
  'dig-grid': 'Each figure stands above its cross: one every {x} of x and {y} of y.',
  'dig-from-spots': 'From spot levels of the site.',
  'dig-from-stakes': 'From ground levels at the stakes.',
  'dig-along-strings':
    'One depth is used for the whole dig: {depth}, the average along the strings.',
  'dig-uniform': 'One depth is used for the whole dig: {depth}. Measure at the stakes.',
  'one-depth-fill': 'One depth is used for the whole dig: fill {depth}, on average.',
  'depth-at-stake': '{stake}: {depth}',
  'x-value': 'x {value}',
  'y-value': 'y {value}',
  'one-depth': '{depth}',
  'deepest-dig': 'deepest dig {depth}',
  'lowest-ground': 'lowest ground {depth} below subgrade',
  'deepest-at': 'Deepest dig {depth}, at x {x}, y {y}.',
  'lowest-at': 'Lowest ground {depth} below subgrade, at x {x}, y {y}.',
  'zero-line': 'line where there is neither dig nor fill',
  'not-reached': 'There is no figure where the ground levels do not reach.',
  'describe-depths': '{pavement}. {basis} {deepest}',
} as const;
