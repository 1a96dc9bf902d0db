// Rules of style sheets. A drawing takes those that it has marks for, so that it carries no others.

/** Text, and lines that most drawings have. Internal. */
export const COMMON_RULES: readonly string[] = [
  'text{fill:$ink}',
  '.strong{font-weight:bold}',
  '.faint{fill:$faint}',
  '.paper{fill:$paper}',
  '.edge{stroke:$ink;stroke-width:1.4}',
  '.bare{stroke:none}',
  '.dimension{stroke:$ink;stroke-width:.8}',
  '.tick{stroke:$ink;stroke-width:1.5}',
  '.leader{stroke:$faint;stroke-width:.8}',
  '.string{stroke:$mark;stroke-width:1.8}',
  '.finish{stroke:$ink;stroke-width:2.4}',
  '.old{stroke:$ink;stroke-width:1.6;stroke-dasharray:9 5}',
  '.dig{stroke:$ink;stroke-width:2;stroke-dasharray:12 4 3 4}',
  '.stake{fill:$paper;stroke:$ink;stroke-width:1.4}',
  '.solid{fill:$ink;stroke:$ink}',
  '.knock{fill:$paper;fill-opacity:.88}',
  '.open{fill:none}',
  '.fall{stroke:$ink;stroke-width:1.8}',
];

/** Lifts of a layer, and moves of stakes. Internal. */
export const LIFT_RULES: readonly string[] = [
  '.lift{stroke:$ink;stroke-width:1;stroke-dasharray:2 4}',
];

/** Edges of base and dig, root zones and marked lines from above. Internal. */
export const PLAN_RULES: readonly string[] = [
  '.base{stroke:$ink;stroke-width:1.2;stroke-dasharray:4 3}',
  '.dig-top{stroke:$ink;stroke-width:1.2;stroke-dasharray:14 4 2 4 2 4}',
  '.root-zone{stroke:$ink;stroke-width:1.4;stroke-dasharray:1 4;stroke-linecap:round}',
  '.casing{stroke:$ink;stroke-width:5.5;stroke-linejoin:round}',
  '.marked{stroke:$paper;stroke-width:2.6;stroke-linejoin:round}',
  '.line-plain{stroke:$ink;stroke-width:3.4;stroke-dasharray:16 5}',
];

/** The line where dig turns to fill. Internal. */
export const ZERO_RULES: readonly string[] = ['.zero{stroke:$ink;stroke-width:2.6}'];

/** Frames of hold points. Internal. */
export const HOLD_RULES: readonly string[] = [
  '.hold-frame{fill:$paper;stroke:$ink;stroke-width:2.4}',
];

/** What a tolerance allows. Internal. */
export const ALLOWED_RULES: readonly string[] = [
  '.allowed{stroke:$faint;stroke-width:7;stroke-opacity:.6}',
];

/** Colours that locators mark lines in, for a screen; on paper the words tell. */
const MARK_COLOURS = {
  red: '#e5352b',
  yellow: '#ffd500',
  orange: '#ff8a1f',
  blue: '#3d8bff',
  purple: '#a866e0',
  green: '#35a853',
  pink: '#ff8fc0',
  white: '#ffffff',
} as const;

/** Marked lines in their colours. Internal. */
export const MARK_RULES: readonly string[] = [...Object.entries(MARK_COLOURS)].map(
  ([name, colour]) => `.marked-${name}{stroke:${colour}}`,
);
