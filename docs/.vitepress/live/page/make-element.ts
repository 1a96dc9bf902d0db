type Attribute = string | number | boolean;

/** What an element is made with: attributes by name (false leaves one out), `text`, and children. */
export interface Making {
  readonly text?: string;
  readonly class?: string;
  readonly attributes?: Readonly<Record<string, Attribute>>;
  readonly children?: readonly (Node | string)[];
  readonly on?: Readonly<Record<string, (event: Event) => void>>;
}

/** Makes an element; text is set as text, so nothing in it is read as markup. */
export function makeElement<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  { text, class: name, attributes = {}, children = [], on = {} }: Making = {},
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (name !== undefined) element.className = name;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== false) element.setAttribute(key, value === true ? '' : String(value));
  }
  if (text !== undefined) element.textContent = text;
  element.append(...children);
  for (const [type, listener] of Object.entries(on)) element.addEventListener(type, listener);
  return element;
}

/** A button that does not send a form. */
export const makeButton = (text: string, press: () => void, more: Making = {}): HTMLButtonElement =>
  makeElement('button', {
    ...more,
    text,
    attributes: { type: 'button', ...more.attributes },
    on: { click: press },
  });

/** A drawing of the library as an element; the library escapes what it writes into it. */
export function drawingElement(svg: string): HTMLElement {
  const holder = makeElement('div', { class: 'drawing', attributes: { tabindex: 0 } });
  holder.innerHTML = inScheme(svg);
  const name = holder.querySelector('title')?.textContent ?? 'drawing';
  holder.setAttribute('role', 'group');
  holder.setAttribute('aria-label', name);
  return holder;
}

const DARK = /@media\(prefers-color-scheme:dark\)\{(\.settline-screen\{[^}]*\})\}/;
const VARIABLES = /\.settline-screen\{(--[^}]*)\}/;

/** A page may be set light or dark against the device: its own setting decides. */
function inScheme(svg: string): string {
  const dark = new Map(variablesOf(DARK.exec(svg)?.[1] ?? ''));
  return svg.replace(DARK, '').replace(VARIABLES, (rule) => {
    const pairs = variablesOf(rule).map(
      ([name, light]) => `${name}:light-dark(${light},${dark.get(name) ?? light})`,
    );
    return `.settline-screen{${pairs.join(';')}}`;
  });
}

const variablesOf = (rule: string): (readonly [string, string])[] =>
  [...rule.matchAll(/(--[\w-]+):([^;}]+)/g)].map(([, name = '', value = '']) => [name, value]);
