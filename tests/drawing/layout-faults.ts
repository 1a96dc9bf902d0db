// What is wrong with the layout of a drawing: marks outside the picture, texts on each other.
import { elementsOf, numberOf, readXml, type Element } from './read-svg.js';
import { measuredWidth } from './type-widths.js';

interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxOf(element: Element): Box {
  const { attributes, text } = element;
  const [x, y, size] = [
    numberOf(element, 'x'),
    numberOf(element, 'y'),
    numberOf(element, 'font-size'),
  ];
  const long = measuredWidth(text, size, (attributes['class'] ?? '').includes('strong'));
  const share =
    { start: 0, middle: 0.5, end: 1 }[attributes['text-anchor'] ?? 'start'] ?? Number.NaN;
  const [above, below] = [0.75 * size, 0.22 * size];
  const turned = attributes['transform'];
  if (turned === undefined) {
    const left = x - share * long;
    return { text, left, right: left + long, top: y - above, bottom: y + below };
  }
  if (turned.replace(/\.00/g, '') !== `rotate(-90 ${x} ${y})`) {
    const [, tx, ty] = /^rotate\(-90 ([\d.]+) ([\d.]+)\)$/.exec(turned) ?? [];
    if (Math.abs(Number(tx) - x) > 0.01 || Math.abs(Number(ty) - y) > 0.01) throw new Error(turned);
  }
  const bottom = y + share * long;
  return { text, left: x - above, right: x + below, top: bottom - long, bottom };
}

const pairsOf = (text: string): number[] => (text.match(/-?[\d.]+/g) ?? []).map(Number);

/** The points of everything that is drawn outside `defs`. */
function pointsOf(element: Element): (readonly [number, number])[] {
  if (element.name === 'defs') return [];
  const own = (x: string, y: string): readonly [number, number] => [
    numberOf(element, x),
    numberOf(element, y),
  ];
  const inPairs = (numbers: readonly number[]) =>
    numbers.flatMap((x, k) => (k % 2 === 0 ? [[x, numbers[k + 1] ?? Number.NaN] as const] : []));
  const points = {
    line: () => [own('x1', 'y1'), own('x2', 'y2')],
    polyline: () => inPairs(pairsOf(element.attributes['points'] ?? '')),
    polygon: () => inPairs(pairsOf(element.attributes['points'] ?? '')),
    path: () => inPairs(pairsOf(element.attributes['d'] ?? '')),
    circle: () => [own('cx', 'cy')],
    rect: () => {
      if (element.attributes['class'] === 'paper') return [];
      const [x, y] = own('x', 'y');
      return [
        [x, y] as const,
        [x + numberOf(element, 'width'), y + numberOf(element, 'height')] as const,
      ];
    },
  }[element.name];
  return [...(points?.() ?? []), ...element.children.flatMap(pointsOf)];
}

/** Everything wrong with a drawing; empty where all is well. */
export function layoutFaults(svg: string): string[] {
  const root = readXml(svg);
  const [, , width = 0, height = 0] = pairsOf(root.attributes['viewBox'] ?? '');
  const boxes = elementsOf(root, 'text').map(boxOf);
  const isOut = (x: number, y: number) => !(x >= 0 && y >= 0 && x <= width && y <= height);
  const faults = pointsOf(root)
    .filter(([x, y]) => isOut(x, y))
    .map(([x, y]) => `a mark at ${x}, ${y} is outside`);
  boxes.forEach((box, index) => {
    if (isOut(box.left, box.top) || isOut(box.right, box.bottom))
      faults.push(`"${box.text}" is outside`);
    for (const other of boxes.slice(index + 1)) {
      const isApart =
        box.right <= other.left ||
        other.right <= box.left ||
        box.bottom <= other.top ||
        other.bottom <= box.top;
      if (!isApart) faults.push(`"${box.text}" lies on "${other.text}"`);
    }
  });
  return faults;
}
