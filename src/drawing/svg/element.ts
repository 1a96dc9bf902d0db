import { coordinateText } from './coordinate-text.js';
import { escapeText } from './escape-text.js';

/** What stands in the tag of an element; numbers are coordinates. Internal. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element with children that are SVG already. Internal. */
export function element(name: string, attributes: Attributes, children = ''): string {
  let tag = `<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value === undefined) continue;
    tag += ` ${key}="${typeof value === 'number' ? coordinateText(value) : escapeText(value)}"`;
  }
  return children === '' ? `${tag}/>` : `${tag}>${children}</${name}>`;
}

/** An element that holds text. Internal. */
export const textElement = (name: string, attributes: Attributes, text: string): string =>
  element(name, attributes, escapeText(text));
