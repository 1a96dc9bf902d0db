import { choice, readWhole } from '../../../input/field.js';
import { SHEET_WIDTH } from '../../../input/ranges.js';
import { makePlainReader } from '../../../input/reader.js';
import { refuseUnknown } from '../../../input/unknown-field.js';
import type { SheetSystem } from './lengths-of-sheet.js';

/** How a sentence is written. */
export interface DescribePartOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
}

/** How a sheet is written. */
export interface JobSheetOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** Characters in a line, 40 to 120. Default 48: a phone held upright, or half a printed page. */
  readonly width?: number;
}

const SYSTEMS = ['us', 'metric'] as const satisfies readonly SheetSystem[];

/** The two ways of writing, as a field. Internal. */
export const systemField = choice<SheetSystem>(SYSTEMS);

/** Reads how a sentence is written. Internal. */
export const readSystem = (options: unknown): SheetSystem =>
  readWriting(options, { system: true }, 0).system;

/** Reads how a sheet is written; `width` stands where none is given. Internal. */
export const readSheetOptions = (options: unknown, width = 48): Required<JobSheetOptions> =>
  readWriting(options, { system: true, width: true }, width);

/** Words and a plain number: no reader of quantities is needed, and a sheet loads none. */
function readWriting(
  options: unknown,
  names: Readonly<Record<string, true>>,
  width: number,
): Required<JobSheetOptions> {
  const reader = makePlainReader();
  const raw = reader.object(options, []);
  const misspelt = reader.faults() > 0 ? null : refuseUnknown(reader, raw, [], names);
  const given = (name: string) => (Object.hasOwn(raw, name) ? raw[name] : undefined);
  const isDue = misspelt !== null && !(misspelt.has('system') && given('system') === undefined);
  const system = isDue ? reader.choice(given('system'), ['system'], SYSTEMS) : 'us';
  const own = names['width'] === true ? given('width') : undefined;
  const read = {
    system,
    width: own === undefined ? width : readWhole(reader, own, ['width'], SHEET_WIDTH),
  };
  reader.finish();
  return read;
}
