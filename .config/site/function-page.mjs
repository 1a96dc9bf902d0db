// The page of one function.
import { calledParts } from './called-parts.mjs';
import { firstSentence, plain, summaryOf, tagTexts, cell } from './comment-text.mjs';
import { withImports } from './example-text.mjs';
import { fieldTable } from './field-table.mjs';
import { sourceLink, testsOf } from './related-files.mjs';
import { formulasText } from './step-formulas.mjs';
import { sourceText } from './sources.mjs';
import { signatureText, typeText } from './type-text.mjs';

const section = (title, text) => (text === '' ? '' : `## ${title}\n\n${text}\n`);

/** The fields of a type that is declared as an object. */
function declaredFields(type) {
  const target = type?.type === 'reference' ? type.reflection : undefined;
  if (target === undefined || target.typeParameters !== undefined) return undefined;
  return target.children ?? target.type?.declaration?.children;
}

const isClass = (type) => type?.reflection?.kind === 128;

function parametersOf(signature) {
  const parameters = signature.parameters ?? [];
  if (parameters.length === 0) return '';
  const rows = parameters.map(({ name, type, flags, comment, defaultValue }) => {
    const optional = flags.isOptional || defaultValue !== undefined ? ', optional' : '';
    const text = summaryOf(comment).replace(/^-\s*/, '');
    return `| \`${name}\`${optional} | \`${cell(typeText(type))}\` | ${cell(text)} |`;
  });
  const table = ['| argument | type | what it is |', '| --- | --- | --- |', ...rows].join('\n');
  const fields = parameters.flatMap(({ name, type }) => {
    const found = isClass(type) ? undefined : declaredFields(type);
    const isPlain = found !== undefined && found.every((field) => field.signatures === undefined);
    return isPlain && found.length <= 40
      ? [`### Fields of \`${name}\`\n\n${fieldTable(found)}`]
      : [];
  });
  return [table, ...fields].join('\n\n');
}

function resultOf(signature) {
  const said = tagTexts(signature.comment, '@returns').join('\n\n');
  const fields = isClass(signature.type) ? undefined : declaredFields(signature.type);
  const type = `Returns \`${typeText(signature.type)}\`${said === '' ? '.' : `: ${said}${/[.!?)]$/.test(said) ? '' : '.'}`}`;
  const table = fields !== undefined && fields.length <= 40 ? fieldTable(fields) : '';
  return [type, table].filter(Boolean).join('\n\n');
}

/** Codes of errors as links, and what the comments call the reading codes. */
export const errorsText = (texts, names = new Map()) =>
  texts
    .join('\n\n')
    .replaceAll(/`([A-Z][A-Z_]+)`/g, (whole, code) =>
      names.has(code)
        ? whole
        : `[\`${code}\`](../../reference/error-codes.md#${code.toLowerCase()})`,
    )
    .replaceAll(
      /\bthe reading\s+codes\b/g,
      '[the reading codes](../../reference/error-codes.md#reading-codes)',
    );

function exampleOf(comment, names) {
  const codes = tagTexts(comment, '@example').map(
    (text) => /```\w*\n([\s\S]*?)```/.exec(text)?.[1] ?? text,
  );
  return codes.map((code) => `\`\`\`ts\n${withImports(code, names)}\n\`\`\``).join('\n\n');
}

/** The page of a function of a folder. */
export function functionPage(reflection, folder, { names, sources, files, hasPage }) {
  const [first] = reflection.signatures;
  const comment = first.comment ?? reflection.comment;
  const { name } = reflection;
  const [file] = reflection.sources ?? [];
  const quoted = tagTexts(comment, '@source').flatMap((text) => sourceText(text, sources, 1));
  const tests = testsOf(name, folder, files).map((path) => `- ${sourceLink(path, 2)}`);
  const code = file === undefined ? '' : `- ${sourceLink(file.fileName, 2)}, line ${file.line}`;
  const parts = file === undefined ? [] : calledParts(files, file.fileName, name, hasPage);
  const see = tagTexts(comment, '@see').map((text) => `- ${text}`);
  return `---
title: ${name}
description: ${JSON.stringify(plain(firstSentence(comment)) || `The function ${name} of settline/${folder}.`)}
---

# ${name}

${summaryOf(comment)}

\`\`\`typescript
import { ${name} } from 'settline/${folder}';

${reflection.signatures.map(signatureText).join('\n')}
\`\`\`

${section('Example', exampleOf(comment, names))}
${section('Arguments', parametersOf(first))}
${section('Result', resultOf(first))}
${section('Formulas', formulasText(parts))}
${section('Errors', errorsText(tagTexts(comment, '@throws'), names))}
${section('Source', quoted.map((text) => `- ${text}`).join('\n'))}
${section('See also', see.join('\n'))}
${section('Code and tests', [code, ...tests].filter(Boolean).join('\n'))}`.replaceAll(
    /\n{3,}/g,
    '\n\n',
  );
}
