import { COMMON_TEXTS } from '../frame/common-texts.js';

/** The English labels of all that is drawn from above. */
export const ABOVE_TEXTS = {
  'axis-x': 'x',
  'axis-y': 'y',
  'paving-line': 'edge of the paving',
  'dig-bottom-line': 'edge of the dig, bottom',
} as const;

/** The English labels of a plan. */
export const PLAN_TEXTS = {
  ...COMMON_TEXTS,
  ...ABOVE_TEXTS,
  'plan-title': 'Plan of {site}',
  'plan-title-of': 'Plan of {pavement}',
  'lengths-us': 'Lengths in feet and inches.',
  'lengths-metric': 'Lengths in metres.',
  'plan-axes': 'x and y are those of the job. The job does not say which way is north.',
  'offsets-scaled': 'Stakes are drawn {factor} times as far off their line as they are.',
  'offsets-sides': 'Left and right: stand at the first stake of a string, facing the last.',
  'offsets-none': 'Every stake is drawn where it stands.',
  'caution-plan':
    'Marked lines are drawn where the job has them. Have them located before you dig, and dig by hand in their zones.',
  'base-line': 'edge of the base',
  'base-and-dig-line': 'edge of base and dig, bottom',
  'dig-top-line': 'edge of the dig, top of its slope',
  'string-line': 'string, with its stakes',
  'marked-line': 'marked line',
  'hand-dig-zone': 'zone of a marked line: dig by hand',
  'root-zone': 'root zone of a tree',
  'old-paving-line': 'old paving',
  'fall-line': 'the way that water runs, with the fall',
  'edge-with-length': '{edge} {length}',
  'dig-set-out': 'dig {distance}',
  'base-and-dig-set-out': 'base, dig {distance}',
  'side-left': 'left',
  'side-right': 'right',
  'string-name': 'string {string}',
  'fall-percent': '{fall}',
  'line-plain': '{line}, marked line',
  'line-coloured': '{line}: {colour}, {kind}',
  'tree-zone': '{tree}, zone {radius}',
  'old-paving-piece': 'old {material} {thickness}',
  'edges-of': '{pavement}: edges',
  'set-outs-us': 'Base and dig outside the edge of the paving, in inches, rounded up to be marked.',
  'set-outs-metric':
    'Base and dig outside the edge of the paving, in millimetres, rounded up to be marked.',
  'edge-row': '{edge} {kind}, {length}: base {base}, dig {dig}',
  'edge-row-none': '{edge} {kind}, {length}: nothing past it',
  'edge-row-same': '{edge} {kind}, {length}: base and dig {dig}',
  'edge-row-top': '{edge} {kind}, {length}: base {base}, dig {dig}, top {top}',
  'edge-kind-none': 'not said',
  'stakes-unnamed': 'Stakes drawn without ids: {count}. The sheet lists them.',
  'old-paving-elsewhere':
    'Old {material} {thickness} in the dig of {pavement} is not drawn: the job does not say where it lies.',
  'beyond-picture': 'Outside the picture: {names}.',
  'describe-pavement': '{pavement}: {area} of paving, {dig} of dig at the bottom.',
  'describe-edge': 'Edge {row}.',
} as const;
