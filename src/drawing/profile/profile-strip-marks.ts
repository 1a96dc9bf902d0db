import { entry, lastOf } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import type { Picture } from '../frame/frame-drawing.js';
import { CUT, FILL, hatched } from '../frame/hatches.js';
import { coordinateText } from '../svg/coordinate-text.js';
import { element } from '../svg/element.js';
import { cornersOfBox, polygons, polyline, type Point } from '../svg/shapes.js';
import { bandMarks } from './profile-band.js';
import type { ProfileFigures, ProfileStake } from './profile-figures.js';
import { cornersOfArea, earthAreas, groundWithin, type Place } from './profile-ground.js';
import type { Strip, Strips } from './profile-strips.js';

/** Where a strip is drawn. */
interface Strung {
  readonly strip: Strip;
  readonly figures: ProfileFigures;
  readonly at: (place: Place) => Point;
}

const HEAD = 18;
const FOOT = 16;

/** One strip of a profile: the picture, and the figures of its stakes below. Internal. */
export function stripMarks(
  strip: Strip,
  {
    figures,
    scale: { pixelsPerMetre, factor, column },
    top,
    style,
  }: {
    readonly figures: ProfileFigures;
    readonly scale: Strips;
    readonly top: number;
    readonly style: DrawStyle;
  },
): Picture {
  const down = pixelsPerMetre * factor;
  const y = (elevation: number): number => top + HEAD + (strip.high - elevation) * down;
  const strung: Strung = {
    strip,
    figures,
    at: ([station, elevation]) => [strip.x(station), y(elevation)],
  };
  const bottom = y(strip.low) + FOOT;
  const band = bandMarks(strip, { figures, bottom, column, style });
  return {
    marks: [
      ...earthMarks(strung),
      ...surfaceMarks(strung),
      ...layerBar(strung),
      band.leaders,
      polygons(
        'stake',
        strip.stakes.map((stake) => stakeCorners(stake, strung)),
      ),
      stringMark(strung),
      ...band.marks,
    ],
    bottom: band.bottom,
  };
}

/** A surface at a depth below the string along a strip. */
const surface = ({ strip }: Strung, depth: number): Place[] =>
  strip.stakes.map(({ station, string }) => [station, string - depth]);

function earthMarks(strung: Strung): string[] {
  const { figures, strip, at } = strung;
  const [from, to] = [entry(strip.stakes, 0).station, lastOf(strip.stakes).station];
  const ground = groundWithin(figures.groundLine, from, to);
  if (ground.length === 0) return [];
  const areas = earthAreas(ground, surface(strung, figures.subgrade));
  return [
    ...areas.map((area) => hatched('bare', cornersOfArea(area).map(at), area.isFill ? FILL : CUT)),
    ...(ground.length < 2 ? [] : [polyline('old', ground.map(at))]),
    ...strip.stakes.flatMap(({ station, ground: own }) =>
      own === null ? [] : [reading(at([station, own]))],
    ),
  ];
}

/** A ground reading. */
const reading = ([cx, cy]: Point): string => element('circle', { class: 'solid', cx, cy, r: 3 });

/** Finished grade, the layers and the subgrade. */
function surfaceMarks(strung: Strung): string[] {
  const { figures, at } = strung;
  const along = (style: string, depth: number): string =>
    polyline(style, surface(strung, depth).map(at));
  return [
    ...figures.layers.slice(1).map(({ top }) => along('edge', top)),
    along('dig', figures.subgrade),
    along('finish', figures.finish),
  ];
}

const BAR = 14;
const BESIDE = 8;

/** The layers with their hatches, as a bar before the first stake. */
function layerBar({ strip, figures, at }: Strung): string[] {
  const stake = entry(strip.stakes, 0);
  return figures.layers.map(({ top, bottom, hatch }) => {
    const [x, y] = at([stake.station, stake.string - top]);
    const [, low] = at([stake.station, stake.string - bottom]);
    const box = { x: x - BESIDE - BAR, y, width: BAR, height: low - y };
    return hatched('area', cornersOfBox(box), hatch);
  });
}

const HALF = 4;

/** A stake from above the string into the ground, or to finished grade where no ground was measured. */
function stakeCorners({ station, string, ground }: ProfileStake, { figures, at }: Strung): Point[] {
  const [x, y] = at([station, string]);
  const [, foot] = at([station, Math.min(ground ?? string - figures.finish, string)]);
  return [
    [x - HALF, y - 10],
    [x + HALF, y - 10],
    [x + HALF, foot],
    [x, foot + 10],
    [x - HALF, foot],
  ];
}

/** The string, hanging between its stakes. */
function stringMark({ strip, at }: Strung): string {
  const points = strip.stakes.map(({ station, string }) => at([station, string]));
  const path = strip.stakes.map(({ station, string, sag }, index) => {
    const next = strip.stakes[index + 1];
    if (next === undefined) return '';
    // a parabola through the middle of its sag: the point that steers it hangs twice as low
    const middle: Place = [(station + next.station) / 2, (string + next.string) / 2 - 2 * sag];
    return `Q${pair(at(middle))} ${pair(entry(points, index + 1))}`;
  });
  return element('path', {
    class: 'string',
    d: `M${pair(entry(points, 0))}${path.join('')}`,
    fill: 'none',
  });
}

const pair = ([x, y]: Point): string => `${coordinateText(x)},${coordinateText(y)}`;
