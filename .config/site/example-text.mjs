// Examples of the doc comments with the imports that a reader needs to run them.
import { missingImports } from '../collect-examples.mjs';

/** Stands where an example plans the built-in site without saying which. */
const SITE = '// job: the built-in site examples/cedar-court.json, parsed';

const isSite = ({ name, from }) => name === 'job' && !from.startsWith('settline');

/** Whether an example plans the built-in site. */
export const usesSite = (code, names) => missingImports(code, names).some(isSite);

/** The example with its imports in front. */
export function withImports(code, names) {
  const modules = new Map();
  const missing = missingImports(code, names);
  for (const { name, from, isType } of missing.filter((one) => !isSite(one))) {
    modules.set(from, [...(modules.get(from) ?? []), isType ? `type ${name}` : name]);
  }
  const lines = [...modules].map(
    ([from, words]) => `import { ${words.join(', ')} } from '${from}';`,
  );
  if (missing.some(isSite)) lines.push(SITE);
  return [...lines, code.trim()].join('\n');
}
