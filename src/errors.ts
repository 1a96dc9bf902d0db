import { shownText } from './shown-text.js';

/**
 * The one error class of the library and the list of its codes.
 *
 * A code is stable: an app may translate by it. The text beside each code here is what the code
 * means; the message on an error says what was wrong in this very case.
 */
export const ERROR_CODES = {
  // reading a number or a unit
  UNIT_MISSING: 'a bare number where a unit is needed',
  UNIT_UNKNOWN: 'a unit that is not in the catalogue',
  UNIT_AMBIGUOUS: 'a unit name that means more than one unit (a bare "ton")',
  DIMENSION_MISMATCH: 'a unit or quantity of another kind than the one needed',
  NOT_FINITE: 'NaN or infinity where a number is needed',
  NOT_A_NUMBER: 'text that does not spell a number',
  DIVISION_BY_ZERO: 'a division by zero',
  OUT_OF_RANGE: 'a value beyond what the work can mean: a slip of a digit or of a unit',
  NO_KNOWN_PRODUCT: 'a product or quotient of quantities that is no quantity of the catalogue',
  OPERATOR_ON_QUANTITY: 'quantities compared or calculated with by <, >, + or *',
  TEXT_UNREADABLE: 'text that cannot be read; params.reason says why',

  // rounding and printing
  INCREMENT_NOT_POSITIVE: 'a rounding step that is not more than zero',
  INCREMENT_UNSUITABLE: 'a rounding step that the printed form cannot show',

  // fields of an input object
  REQUIRED: 'a field that is missing',
  WRONG_TYPE: 'a field of the wrong type',
  UNKNOWN_FIELD: 'a field that does not exist',
  UNKNOWN_CHOICE: 'a word that is not among the choices',
  NOT_POSITIVE: 'a value that must be more than zero',
  NEGATIVE: 'a value that must not be negative',
  EMPTY: 'a name or text with nothing in it',
  TOO_LONG: 'a name, text or number with more characters than are taken',
  BAD_CHARACTER: 'a line break or control character in a name',
  EMPTY_LIST: 'a list with nothing in it',
  TOO_FEW: 'fewer entries than are needed',
  TOO_MANY: 'more entries than are taken',
  NOT_WHOLE: 'a number that must be whole',
  COUNT_MISMATCH: 'two lists, or a list and a figure, whose counts do not match',
  WRONG_STATE: 'a volume in another state (bank, loose, compacted) than the one needed',
  MORE_FAULTS: 'more faults than are listed',
  DUPLICATE_ID: 'the same id twice',
  LAYER_ORDER: 'layers out of their order from the top down',
  UNKNOWN_ID: 'an id that is defined nowhere',

  // the work itself
  POINTS_COINCIDE: 'points that are all the same point',
  DIRECTION_UNDEFINED: 'points that spread alike in every direction',
  SELF_INTERSECTION: 'an outline that crosses or touches itself',
  ZERO_AREA: 'an outline that encloses nothing',
  CAPACITY_EXCEEDED: 'more pieces than can be counted',
  HOLE_OUTSIDE: 'a hole that does not lie in the outline, clear of other holes',
  OUTLINE_UNRESOLVED: 'a widened outline that could not be made out',

  // grades and levels
  STATION_ORDER: 'stations that do not run forward',
  POINTS_COLLINEAR: 'points that lie on one line where a circle or a plane needs them apart',
  PLANES_PARALLEL: 'two planes that never meet, or are the same',
  SIDE_UNKNOWN: 'a point that does not tell on which side of a line a plane lies',
  LIMITS_CONTRADICT: 'a least value above the greatest one',
  BOOK_ROW: 'a row of a level book whose readings cannot stand together',
  SIGHTS_EQUAL: 'two set-ups whose sights differ alike, so that no error of the level can show',
  // strings, stakes and curves
  TRIANGLE_IMPOSSIBLE: 'three lengths that close no triangle',
  OUTSIDE_ARC: 'a mark that the arc does not reach',
  TANGENTS_OVERLAP: 'a rounded corner that is longer than its sides',

  // site and checks
  NOT_INCREASING: 'values that must grow from one to the next',
  LIMIT_NOT_SET: 'a tolerance that the chosen set does not print',
  READINGS_TOO_SPARSE: 'readings too far apart for the length of the straightedge',

  // materials
  CONFLICTING_FIELDS: 'fields of which one follows from the others, or that exclude each other',
  BORDER_TOO_DEEP: 'a border that the paving has no room for',
  ARC_MEETS_CORNER: 'an arc with a border that meets its neighbour at a corner',
  ROLL_NARROWER_THAN_OVERLAP: 'an overlap that is not narrower than the roll',
  PASSING_RISES: 'more passing a finer sieve than a coarser one',

  // surfaces and volumes
  TWO_HEIGHTS: 'two points at one place with different heights',
  CORNERS_NOT_CONVEX: 'four corners that do not stand in order round a convex figure',
  SURFACES_APART: 'surfaces, or a surface and an outline, that share no area',

  // whole jobs
  NOT_FOUR_CORNERS: 'four corners that make no rectangle, or are not in order',
  JOB_INVALID: 'a job description with one or more faults; each stands in `issues`',
  PLAN_INVALID: 'what is no plan, or a saved plan that cannot be read back',
  PLAN_ALTERED: 'a saved plan with a figure that its job does not give',
} as const;

/** Every code a {@link SettlineError} may carry. */
export type ErrorCode = keyof typeof ERROR_CODES;

/** The way to a field: `['stakes', 3, 'y']`. */
export type FieldPath = readonly (string | number)[];

/** One fault: where, which, in words, and the values for a translation. */
export interface Issue {
  readonly path: FieldPath;
  readonly code: ErrorCode;
  readonly message: string;
  readonly params: Readonly<Record<string, string | number | boolean>>;
}

const BRAND = Symbol.for('settline.error');

/**
 * Thrown by every entry point that refuses its input. All faults of one call come at once, in
 * `issues`; `code`, `path` and `params` are those of the first (or `JOB_INVALID` for a whole job).
 */
export class SettlineError extends Error {
  readonly code: ErrorCode;
  readonly path: FieldPath;
  readonly params: Issue['params'];
  readonly issues: readonly Issue[];

  constructor(issues: readonly [Issue, ...Issue[]], code: ErrorCode = issues[0].code) {
    super(describeIssues(issues));
    this.name = 'SettlineError';
    this.code = code;
    this.path = issues[0].path;
    this.params = issues[0].params;
    this.issues = Object.freeze([...issues]);
    Object.defineProperty(this, BRAND, { value: true });
  }
}

/**
 * Tells a {@link SettlineError} from any other thrown value, also across the ESM and CJS copies of
 * the package, where `instanceof` fails.
 */
export function isSettlineError(value: unknown): value is SettlineError {
  return value instanceof Error && (value as Error & { [BRAND]?: unknown })[BRAND] === true;
}

/** Makes an error of one fault. */
export function fault(
  code: ErrorCode,
  message: string,
  params: Issue['params'] = {},
  path: FieldPath = [],
): SettlineError {
  return new SettlineError([{ path, code, message, params }]);
}

/** Writes a field path the way a person reads it: `pavements[0].layers[1].thickness`. */
export function pathText(path: FieldPath): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (/^[A-Za-z_$][\w$]*$/.test(step)) text += text === '' ? step : `.${step}`;
    else text += `[${JSON.stringify(step)}]`;
  }
  return text;
}

/** So many faults stand in the message; `issues` holds all. */
const MOST_DESCRIBED = 20;

function describeIssues(issues: readonly Issue[]): string {
  const lines = issues.slice(0, MOST_DESCRIBED).map(describeIssue);
  const more = issues.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${more} more`] : [])].join('\n');
}

function describeIssue({ path, message }: Issue): string {
  if (path.length === 0) return message;
  // a key may be the caller's own text
  const steps = path.map((step) => (typeof step === 'string' ? shownText(step) : step));
  return `${pathText(steps)}: ${message}`;
}
