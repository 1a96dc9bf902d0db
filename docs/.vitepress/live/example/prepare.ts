// Makes an example into code that can be run: each expression with `//=>` behind it is noted with its
// line, names are taken from the library where it imports or leaves them out. It follows what the test
// of the examples does with the same text (.config/collect-examples.mjs).
import { parse, type Program, type Statement, type ModuleDeclaration } from 'acorn';

/** Code that was made ready, or the fault that stops it. */
export type Prepared =
  | { readonly ok: true; readonly body: string }
  | { readonly ok: false; readonly message: string; readonly line: number | null };

type Part = Statement | ModuleDeclaration;

/** A name of the example's own that its text hands values to. */
export const NOTE = '__note';
/** The object that has all names of the library. */
export const LIBRARY = '__library';

const EXPECTED = /^;?[ \t]*(?:\n[ \t]*)?\/\/=>[ \t]*([^\n]*)/;

function parseModule(code: string): Program {
  return parse(code, {
    ecmaVersion: 2022,
    sourceType: 'module',
    allowAwaitOutsideFunction: true,
    locations: true,
  });
}

/** Plain script as it is; types are taken out by a package that is loaded only where there are any. */
async function withoutTypes(
  code: string,
): Promise<{ readonly text: string; readonly program: Program }> {
  try {
    return { text: code, program: parseModule(code) };
  } catch (error) {
    const text = await stripped(code);
    if (text === undefined || text === code) throw error;
    return { text, program: parseModule(text) };
  }
}

async function stripped(code: string): Promise<string | undefined> {
  const { transform } = await import('sucrase');
  try {
    return transform(code, { transforms: ['typescript'], disableESTransforms: true }).code;
  } catch {
    return undefined;
  }
}

/** Prepares an example; a fault of its text is returned with its line. */
export async function prepareExample(code: string): Promise<Prepared> {
  try {
    const { text, program } = await withoutTypes(code);
    return { ok: true, body: program.body.map((part) => placed(part, text)).join('\n') };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { ok: false, message: message.replace(/ \(\d+:\d+\)$/, ''), line: lineOfFault(error) };
  }
}

function lineOfFault(error: unknown): number | null {
  if (typeof error !== 'object' || error === null || !('loc' in error)) return null;
  const { loc } = error as { readonly loc?: { readonly line?: number } };
  return loc?.line ?? null;
}

/** A statement that first says at which line it stands, for the fault it may meet. */
const placed = (part: Part, text: string): string =>
  `${NOTE}.line = ${part.loc?.start.line ?? 0};\n${runnable(part, text)}`;

function runnable(part: Part, text: string): string {
  const line = part.loc?.end.line ?? 0;
  const own = text.slice(part.start, part.end);
  if (part.type === 'ImportDeclaration') return taken(part, line);
  if (part.type.startsWith('Export'))
    throw refusal('an example exports nothing. Remove `export`.', line);
  if (/\bimport\s*\(/.test(own))
    throw refusal('an example loads nothing. Remove `import()`.', line);
  if (part.type !== 'ExpressionStatement') return own;
  const expected = EXPECTED.exec(text.slice(part.end));
  if (expected === null) return own;
  const at = line + (expected[0].split('\n').length - 1);
  const expression = text.slice(part.expression.start, part.expression.end);
  const written = expected[1] ?? '';
  return `${NOTE}(${at}, (${expression}), async () => (${written}), ${JSON.stringify(written)});`;
}

/** An import becomes names of the one library. */
function taken(part: Part & { readonly type: 'ImportDeclaration' }, line: number): string {
  const from = String(part.source.value);
  if (!/^settline(?:\/[a-z-]+)?$/.test(from)) {
    throw refusal(`only settline can be imported here, not ${JSON.stringify(from)}.`, line);
  }
  const names = part.specifiers.map((one) => {
    if (one.type !== 'ImportSpecifier' || one.imported.type !== 'Identifier') {
      throw refusal('import names in braces, such as { length }.', line);
    }
    const { name } = one.imported;
    return name === one.local.name ? name : `${name}: ${one.local.name}`;
  });
  return names.length === 0 ? '' : `const { ${names.join(', ')} } = ${LIBRARY};`;
}

const refusal = (message: string, line: number): Error =>
  Object.assign(new Error(message), { loc: { line } });
