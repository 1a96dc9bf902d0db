import type { Step } from 'settline';

/** Words of an input: ids, names, materials. */
function wordsIn(value: unknown, seen = new Set<unknown>()): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  return Object.values(value).flatMap((part) => wordsIn(part, seen));
}

/** Titles without the ids, names and numbers of one input. */
function strip(words: readonly string[]): (title: string) => string {
  const ids = [...new Set(words)].filter((word) => word !== '' && word.length < 60);
  return (title) =>
    ids
      .filter((id) => title.includes(id))
      .sort((a, b) => b.length - a.length)
      .reduce((bare, id) => bare.replace(wholeWord(id), '#'), title)
      .replace(/\d+/g, '#');
}

const wholeWord = (id: string): RegExp =>
  new RegExp(`(?<!\\w)${id.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')}(?!\\w)`, 'g');

/** Kinds of step, each once: the function and the title without ids, and what kind of step it is. */
export class StepKinds {
  readonly #kinds = new Map<string, Step['kind']>();

  /** Adds the steps that a function has made of an input. */
  add(name: string, given: unknown, steps: readonly Step[]): void {
    const bare = strip(wordsIn(given));
    for (const { title, kind } of steps) this.#kinds.set(`${name}: ${bare(title)}`, kind);
  }

  /** How many kinds there are. */
  get count(): number {
    return this.#kinds.size;
  }

  /** The kinds that are procedures. */
  get procedures(): string[] {
    return [...this.#kinds].flatMap(([name, kind]) => (kind === 'procedure' ? [name] : []));
  }
}
