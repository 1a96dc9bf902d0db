import { shownText } from './shown-text.js';

/**
 * The error codes of the library, each with its meaning. A code is stable, so an app can translate by
 * it. The message of an error describes the fault itself.
 */
export const ERROR_CODES = {
  // reading a number or a unit
  UNIT_MISSING: 'a number without its unit',
  UNIT_UNKNOWN: 'a unit that is not in the catalogue',
  UNIT_AMBIGUOUS: 'a unit name that means more than one unit (a bare "ton")',
  DIMENSION_MISMATCH: 'a unit or quantity of the wrong kind',
  NOT_FINITE: 'NaN or infinity instead of a number',
  NOT_A_NUMBER: 'text that is not a number',
  DIVISION_BY_ZERO: 'a division by zero',
  OUT_OF_RANGE: 'a value outside its range, often a wrong digit or unit',
  NO_KNOWN_PRODUCT: 'a product or quotient that has no quantity in this library',
  OPERATOR_ON_QUANTITY: '<, >, + or * used on quantities',
  TABLE_UNCLEAR: 'a table of text that can be read in more than one way, or not at all',
  TEXT_UNREADABLE: 'text that cannot be read; params.reason says why',

  // rounding and printing
  INCREMENT_NOT_POSITIVE: 'a rounding step that is not greater than zero',
  INCREMENT_UNSUITABLE: 'a rounding step that the printed form cannot show',

  // fields of an input object
  REQUIRED: 'a field that is missing',
  WRONG_TYPE: 'a field of the wrong type',
  UNKNOWN_FIELD: 'a field that does not exist',
  UNKNOWN_CHOICE: 'a word that is not one of the choices',
  NOT_POSITIVE: 'a value that is not greater than zero',
  NEGATIVE: 'a negative value that must be zero or more',
  EMPTY: 'a name or text with nothing in it',
  TOO_LONG: 'a name, text or number with too many characters',
  BAD_CHARACTER: 'a line break or control character in a name',
  EMPTY_LIST: 'a list with nothing in it',
  TOO_FEW: 'fewer entries than are needed',
  TOO_MANY: 'more entries than the list may hold',
  NOT_WHOLE: 'a number that must be whole',
  COUNT_MISMATCH: 'two counts that do not match, of lists or of a list and a number',
  WRONG_STATE: 'a volume in the wrong state (bank, loose, compacted)',
  MORE_FAULTS: 'faults beyond those listed',
  DUPLICATE_ID: 'an id that is used twice',
  LAYER_ORDER: 'layers that are not listed from the top down',
  UNKNOWN_ID: 'an id that is not defined anywhere',

  // the work itself
  POINTS_COINCIDE: 'points that are all the same point',
  DIRECTION_UNDEFINED: 'points evenly spread, so no line fits',
  SELF_INTERSECTION: 'an outline that crosses or touches itself',
  ZERO_AREA: 'an outline that encloses no area',
  CAPACITY_EXCEEDED: 'a count that is too large',
  HOLE_OUTSIDE: 'a hole that is not inside the outline, clear of other holes',
  OUTLINE_UNRESOLVED: 'a widened or combined outline that could not be worked out',
  OUTLINES_OVERLAP: 'two pavings that overlap',

  // grades and levels
  STATION_ORDER: 'stations out of order',
  POINTS_COLLINEAR: 'points on one line, so no circle or plane fits',
  PLANES_PARALLEL: 'two planes that never meet, or are the same',
  SIDE_UNKNOWN: 'a point on the line, so it does not show the side',
  LIMITS_CONTRADICT: 'limits that leave nothing between them, such as a minimum above its maximum',
  BOOK_ROW: 'a row of a level book with readings that exclude each other',
  SIGHTS_EQUAL:
    'two set-ups with the same difference of sights, so they cannot show an error of the level',
  // strings, stakes and curves
  TRIANGLE_IMPOSSIBLE: 'three lengths that cannot form a triangle',
  OUTSIDE_ARC: 'a mark past the end of the arc',
  TANGENTS_OVERLAP: 'a rounded corner that is longer than its sides',

  // site and checks
  NOT_INCREASING: 'a value that is not greater than the one before',
  LIMIT_NOT_SET: 'a tolerance that the chosen set does not have',
  READINGS_TOO_SPARSE: 'readings too far apart for the length of the straightedge',

  // materials
  CONFLICTING_FIELDS: 'fields that exclude each other, or a field that follows from the others',
  BORDER_TOO_DEEP: 'a border too deep for the paving',
  ARC_MEETS_CORNER: 'a bordered arc that meets the next edge at a corner',
  ROLL_NARROWER_THAN_OVERLAP: 'an overlap that is not narrower than the roll',
  PASSING_RISES: 'more passing a finer sieve than a coarser one',

  // surfaces and volumes
  TWO_HEIGHTS: 'one point with two different heights',
  CORNERS_NOT_CONVEX: 'four corners that do not form a convex outline, or are not in order',
  BEND_TOO_TIGHT:
    'paving so far inside a bend of its line of levels that a leg has no length there',
  SURFACES_APART: 'surfaces, or a surface and an outline, that share no area',

  // whole jobs
  NOT_FOUR_CORNERS: 'four corners that do not form a rectangle, or are not in order',
  FORMULA_INVALID: 'a formula that does not follow the grammar of the working',
  JOB_INVALID: 'a job with one or more faults; each is in `issues`',
  PLAN_INVALID: 'not a plan, or a saved plan that cannot be read back',
  NOT_EXPLAINED: 'a value of a plan that no step of its working gives',
  PLAN_ALTERED: 'a saved plan with a figure that differs from its job',

  // many jobs
  PACKAGE_MISSING: 'an optional package that is needed here and not installed',
  WORKER_LOST: 'a worker that stopped before it answered',
} as const;

/** Code of a {@link SettlineError}. */
export type ErrorCode = keyof typeof ERROR_CODES;

/** Path of a field: `['stakes', 3, 'y']`. */
export type FieldPath = readonly (string | number)[];

/** One fault: path, code, message, and the values to translate it with. */
export interface Issue {
  /** Path of the field; empty for the whole input. */
  readonly path: FieldPath;
  /** Stable code, so an app can translate by it. */
  readonly code: ErrorCode;
  /** The fault and what to do about it, in one or two sentences. */
  readonly message: string;
  /** The values in the message, for a translation. */
  readonly params: Readonly<Record<string, string | number | boolean>>;
}

const BRAND = Symbol.for('settline.error');

/**
 * The error that every function throws if it refuses input. `issues` holds all faults of the call;
 * `code`, `path` and `params` are those of the first (or `JOB_INVALID` for a whole job).
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
 * Tells a {@link SettlineError} from any other thrown value. It also works across the ESM and CJS
 * copies of the package, where `instanceof` fails.
 *
 * @param value - the thrown value
 * @returns true for an error of this library
 * @example
 * isSettlineError(new Error('no error of ours')) //=> false
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

/**
 * Writes a field path the way a person reads it.
 *
 * @param path - the `path` of an {@link Issue}: names and indexes
 * @returns the path as one text; empty for the whole input
 * @throws `WRONG_TYPE` if it is not a path
 * @example
 * pathText(['pavements', 0, 'layers', 1, 'thickness']) //=> 'pavements[0].layers[1].thickness'
 */
export function pathText(path: FieldPath): string {
  if (!Array.isArray(path) || !Array.from<unknown>(path).every(isStep)) {
    throw fault('WRONG_TYPE', 'expected a path: a list of names and indexes');
  }
  let text = '';
  for (const step of path as FieldPath) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (/^[A-Za-z_$][\w$]*$/.test(step)) text += text === '' ? step : `.${step}`;
    else text += `[${JSON.stringify(step)}]`;
  }
  return text;
}

const isStep = (step: unknown): step is string | number =>
  typeof step === 'string' || typeof step === 'number';

/** Number of faults in the message; `issues` holds all. */
const MOST_DESCRIBED = 20;

function describeIssues(issues: readonly Issue[]): string {
  const lines = issues.slice(0, MOST_DESCRIBED).map(describeIssue);
  const more = issues.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${more} more`] : [])].join('\n');
}

function describeIssue({ path, message }: Issue): string {
  if (path.length === 0) return message;
  // a key may be text of the caller
  const steps = path.map((step) => (typeof step === 'string' ? shownText(step) : step));
  return `${pathText(steps)}: ${message}`;
}
