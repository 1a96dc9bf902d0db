// A strict reader of the XML that drawings are made of: what it cannot read is an error.

/** An element with what stands in it. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#39': "'",
};

function decoded(text: string): string {
  if (/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\ufffe\uffff]/.test(text)) {
    throw new Error('a control character');
  }
  return text.replace(/&([^;]*);?/g, (all, name: string) => {
    const mark = ENTITIES[name];
    if (mark === undefined || !all.endsWith(';')) throw new Error(`unknown entity ${all}`);
    return mark;
  });
}

/** Reads a document of one element. */
export function readXml(source: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  const token = /<(\/?)([a-z]+)((?: [\w:-]+="[^"<]*")*)(\/?)>|([^<]+)/gy;
  let at = 0;
  for (let found = token.exec(source); found !== null; found = token.exec(source)) {
    at = token.lastIndex;
    const [, isEnd, name = '', attributes = '', isEmpty, text] = found;
    const parent = open.at(-1);
    if (parent === undefined) throw new Error('text after the end');
    if (text !== undefined) parent.text += decoded(text);
    else if (isEnd === '/') {
      if (parent.name !== name) throw new Error(`</${name}> closes <${parent.name}>`);
      open.pop();
    } else {
      const element: Element = {
        name,
        attributes: { ...inherited(parent), ...readAttributes(attributes) },
        children: [],
        text: '',
      };
      parent.children.push(element);
      if (isEmpty !== '/') open.push(element);
    }
  }
  if (at !== source.length) throw new Error(`cannot be read: ${source.slice(at, at + 60)}`);
  if (open.length !== 1) throw new Error(`<${open.at(-1)?.name}> is not closed`);
  const [only, ...others] = root.children;
  if (only === undefined || others.length > 0 || root.text.trim() !== '')
    throw new Error('not one element');
  return only;
}

/** What the texts of a group have from it. */
function inherited({ name, attributes }: Element): Readonly<Record<string, string>> {
  return name === 'g' && 'font-size' in attributes ? attributes : {};
}

function readAttributes(source: string): Record<string, string> {
  const all: Record<string, string> = {};
  for (const [, name = '', value = ''] of source.matchAll(/ ([\w:-]+)="([^"]*)"/g)) {
    if (name in all) throw new Error(`${name} twice`);
    all[name] = decoded(value);
  }
  return all;
}

/** All elements of a name, in the order of the document. */
export function elementsOf(root: Element, name: string): Element[] {
  const own = root.name === name ? [root] : [];
  return [...own, ...root.children.flatMap((child) => elementsOf(child, name))];
}

/** The texts of a style: `depth`, `thickness`. */
export const textsOf = (root: Element, style: string): string[] =>
  elementsOf(root, 'text')
    .filter(({ attributes }) => (attributes['class'] ?? '').split(' ').includes(style))
    .map(({ text }) => text);

/** A number of an attribute; a missing one is an error. */
export function numberOf({ name, attributes }: Element, key: string): number {
  const value = Number(attributes[key] ?? 'none');
  if (!Number.isFinite(value)) throw new Error(`${key} of <${name}> is ${attributes[key]}`);
  return value;
}

/** The part of a drawing between title and legend. */
export function pictureOf(root: Element): Element {
  const picture = elementsOf(root, 'g').find(({ attributes }) => attributes['class'] === 'picture');
  if (picture === undefined) throw new Error('no picture');
  return picture;
}
