import { makeReader, type Reader } from '../input/reader.js';
import { THICKNESS_OR_NONE } from '../input/ranges.js';
import { length, type LengthInput, type SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ELEVATION, SET_OFF, SLOPE } from './limits.js';

/** How stakes are set off from an edge, and what the string on them stands for. */
export interface SetOffInput {
  /** String above finished grade. */
  readonly stringHeight: LengthInput;
  /** Level distance from the edge out to the stakes. */
  readonly offset: LengthInput;
  /** Slope of the paving across the edge, + rising outward. */
  readonly crossSlope: SlopeInput;
  /**
   * True where the string stands above the paving carried on to the stakes at its cross slope, so that
   * a straight line from string to string lies along the paving; false where it stands above the edge
   * itself.
   */
  readonly carriesCrossSlope: boolean;
  /** The least that the string may stand above the ground, default none. */
  readonly clearance?: LengthInput;
}

/** The string at one stake. */
export interface StringAtStake extends Worked {
  /** Where to tie the string. */
  readonly elevation: Length;
  /** The string above finished grade at the edge. */
  readonly aboveEdge: Length;
  /** What the cross slope adds between edge and stake, carried on or not: + up. */
  readonly crossRise: Length;
  /** The string above the ground at the stake, where the ground is given; negative below it. */
  readonly aboveGround?: Length;
  /** How much too low the string would be over the ground; nothing where it clears it. */
  readonly raiseBy?: Length;
  /** From the foot in the ground to the top, where it is asked for. */
  readonly stakeLength?: Length;
  readonly note: string;
}

/**
 * Where to tie the string on a stake that is set off from the edge, so that the dig does not disturb
 * it: `z = finish + k i o + h`, with k 1 where the string carries the cross slope out and 0 where it
 * does not. It must be said which: 2 % over 0.45 m is 9 mm.
 *
 * Where the string would touch the ground, raise it along the whole line, not on one stake.
 *
 * @param options.finish - elevation of finished grade at the edge [length]
 * @param options.stringHeight - string above finished grade [length], not negative, at most 5 m
 * @param options.offset - level distance from the edge out to the stake [length]
 * @param options.crossSlope - of the paving, outward from the edge [slope, + rising outward]
 * @param options.carriesCrossSlope - true: the string stands above the paving carried on to the stake;
 *   false: above the edge
 * @param options.ground - elevation of the ground at the stake [length], if known
 * @param options.clearance - least height of the string above the ground [length], default none
 * @param options.inGround - how deep the stake goes in [length], to have the stake's length
 * @param options.aboveString - how much of it stands above the string [length], default none
 * @returns elevation of the string, height above edge and ground, length of the stake [length]
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const tie = stringAtStake({
 *   finish: '29.88 m',
 *   stringHeight: '150 mm',
 *   offset: '450 mm',
 *   crossSlope: '-2%',
 *   carriesCrossSlope: true,
 *   ground: '29.84 m',
 *   inGround: '350 mm',
 *   aboveString: '150 mm',
 * });
 * tie.elevation.to('m').toString() //=> '30.021'
 * tie.aboveGround?.to('m').toString() //=> '0.181'
 * tie.stakeLength?.to('m').toString() //=> '0.681'
 */
export function stringAtStake(
  options: SetOffInput & {
    readonly finish: LengthInput;
    readonly ground?: LengthInput;
    readonly inGround?: LengthInput;
    readonly aboveString?: LengthInput;
  },
): StringAtStake {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const finish = reader.quantity('length', fields['finish'], ['finish'], ELEVATION);
  const setOff = readSetOff(reader, fields);
  const optional = (name: string, rule: typeof ELEVATION) =>
    fields[name] === undefined ? undefined : reader.quantity('length', fields[name], [name], rule);
  const ground = optional('ground', ELEVATION);
  const inGround = optional('inGround', SET_OFF);
  const aboveString = optional('aboveString', SET_OFF) ?? NOTHING;
  if (inGround !== undefined && ground === undefined) {
    reader.fail('REQUIRED', ['ground'], 'is missing: the length of a stake needs the ground');
  }
  reader.finish();
  const tie = tieAt(finish, setOff, ground);
  const { aboveGround } = tie;
  const stakeLength =
    inGround === undefined || aboveGround === undefined
      ? {}
      : { stakeLength: inGround.plus(aboveGround).plus(aboveString) };
  return withWorking({ ...tie, ...stakeLength }, () => [tieStep(finish, setOff, tie)]);
}

const NOTHING = length(0, 'm');

/** A set-off that has been read. Internal. */
export interface SetOff {
  readonly stringHeight: Length;
  readonly offset: Length;
  readonly crossSlope: Slope;
  readonly carriesCrossSlope: boolean;
  readonly clearance: Length;
}

/** Reads how stakes are set off. Internal. */
export function readSetOff(reader: Reader, fields: Readonly<Record<string, unknown>>): SetOff {
  const read = (name: string, rule: typeof SET_OFF) =>
    reader.quantity('length', fields[name], [name], rule);
  return {
    stringHeight: read('stringHeight', THICKNESS_OR_NONE),
    offset: read('offset', SET_OFF),
    crossSlope: reader.quantity('slope', fields['crossSlope'], ['crossSlope'], SLOPE),
    carriesCrossSlope: reader.flag(fields['carriesCrossSlope'], ['carriesCrossSlope']),
    clearance: fields['clearance'] === undefined ? NOTHING : read('clearance', THICKNESS_OR_NONE),
  };
}

/** The string at a stake. Internal. */
export function tieAt(
  finish: Length,
  setOff: SetOff,
  ground: Length | undefined,
): Omit<StringAtStake, 'working' | 'stakeLength'> {
  const { stringHeight, offset, crossSlope, carriesCrossSlope, clearance } = setOff;
  const crossRise = offset.times(crossSlope);
  const aboveEdge = carriesCrossSlope ? stringHeight.plus(crossRise) : stringHeight;
  const elevation = finish.plus(aboveEdge);
  if (ground === undefined) return { elevation, aboveEdge, crossRise, note: NOTES.clear };
  const aboveGround = elevation.minus(ground);
  const short = clearance.minus(aboveGround);
  const isShort = !short.isNegative() && !short.isZero();
  const note = isShort ? NOTES.low : NOTES.clear;
  return {
    elevation,
    aboveEdge,
    crossRise,
    aboveGround,
    raiseBy: isShort ? short : NOTHING,
    note,
  };
}

const NOTES = {
  clear: 'Say on the stake how far it is off the edge, and what the string stands above.',
  low: 'The string is too low over the ground here: raise it along the whole line, never on one stake.',
} as const;

/** The step that says how. Internal. */
export const tieStep = (
  finish: Length,
  setOff: SetOff,
  { elevation }: { readonly elevation: Length },
): Step => ({
  title: 'Elevation of the string at the stake',
  formula: setOff.carriesCrossSlope ? 'z = finish + i o + h' : 'z = finish + h',
  given: [
    given('finish', 'finished grade at the edge', finish),
    given('i', 'cross slope (+ rising outward)', setOff.crossSlope),
    given('o', 'offset of the stake', setOff.offset),
    given('h', 'string above finished grade', setOff.stringHeight),
  ],
  result: given('z', 'string', elevation),
  source: 'derived',
});
