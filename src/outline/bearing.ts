import { angle } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { decimalRatio, negateRatio, ratioToDecimal, wholeRatio } from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import type { Vector } from '../units/vector.js';

const FORM =
  /^([NS])\s*(\d{1,2}(?:\.\d+)?)(?:\s*(?:-|°|deg|\s)\s*(\d{1,2}(?:\.\d+)?)(?:\s*(?:-|'|′|\s)\s*(\d{1,2}(?:\.\d+)?))?)?\s*(?:°|deg|'|′|"|″)?\s*([EW])$/i;

/**
 * Direction of a quadrant bearing such as `S 68-05-35 W`: degrees (minutes, seconds) from north or
 * south toward east or west. East is x, north is y. Exact for due directions, else to 40 digits.
 * Undefined for text that is not a bearing. Internal.
 */
export function readBearing(text: string): Vector | undefined {
  const [, from, degrees = '', minutes = '0', seconds = '0', toward] = FORM.exec(text.trim()) ?? [];
  if (from === undefined || toward === undefined) return undefined;
  const [d, m, s] = [degrees, minutes, seconds].map((part) => ratioToDecimal(readNumber(part)));
  if (d === undefined || m === undefined || s === undefined || m.gte(60) || s.gte(60)) {
    return undefined;
  }
  const turn = s.div(60).plus(m).div(60).plus(d);
  if (turn.gt(90)) return undefined;
  const { x, y } = quadrant(turn.toString(), turn.toNumber());
  return {
    x: /e/i.test(toward) ? x : negateRatio(x),
    y: /n/i.test(from) ? y : negateRatio(y),
  };
}

function quadrant(degrees: string, rough: number): Vector {
  if (rough === 0) return { x: wholeRatio(0), y: wholeRatio(1) };
  if (rough === 90) return { x: wholeRatio(1), y: wholeRatio(0) };
  const { si } = angle(degrees, 'deg');
  return { x: decimalRatio(Decimal40.sin(si)), y: decimalRatio(Decimal40.cos(si)) };
}
