// The types and constants of one folder, on one page; a class has members.
import { ReflectionKind } from 'typedoc';
import { cell, firstSentence, summaryOf } from './comment-text.mjs';
import { fieldTable } from './field-table.mjs';
import { parametersText, typeText } from './type-text.mjs';

const { Class, Interface, TypeAlias, Variable } = ReflectionKind;

/** The type parameters of a declaration in pointed brackets. */
const genericText = ({ typeParameters = [] }) =>
  typeParameters.length === 0 ? '' : `<${typeParameters.map(({ name }) => name).join(', ')}>`;

const code = (text) => `\`\`\`typescript\n${text}\n\`\`\``;

/** A type alias as it is declared; a long union has lines of its own. */
function aliasText({ name, type, spelledOut, typeParameters }) {
  const head = `type ${name}${genericText({ typeParameters })} =`;
  const line = `${head} ${spelledOut ?? typeText(type)};`;
  if (line.length <= 90) return line;
  if (spelledOut !== undefined) return wrapped(head, spelledOut.split(' | '));
  if (type.type !== 'union') return line;
  return wrapped(head, type.types.map(typeText));
}

/** Words of a union in lines of a readable length. */
function wrapped(head, words) {
  const lines = [head];
  for (const word of words) {
    const longer = `${lines.at(-1)} | ${word}`;
    if (lines.length > 1 && longer.length <= 90) lines[lines.length - 1] = longer;
    else lines.push(`  | ${word}`);
  }
  return `${lines.join('\n')};`;
}

function members(reflection) {
  const rows = (reflection.children ?? []).flatMap((member) => {
    const signatures = member.signatures ?? (member.getSignature ? [member.getSignature] : []);
    if (signatures.length === 0) {
      return [
        `| \`${member.name}\` | \`${cell(typeText(member.type))}\` | ${cell(summaryOf(member.comment))} |`,
      ];
    }
    const isField = member.signatures === undefined;
    return signatures.map((one) => {
      const text = isField ? typeText(one.type) : `${parametersText(one)} => ${typeText(one.type)}`;
      return `| \`${member.name}\` | \`${cell(text)}\` | ${cell(summaryOf(one.comment))} |`;
    });
  });
  return ['| member | type | what it is |', '| --- | --- | --- |', ...rows].join('\n');
}

/** A constant: short values are shown, long ones are told by their type. */
function constantText({ name, type, defaultValue }) {
  const shown = defaultValue !== undefined && defaultValue !== '...' ? ` = ${defaultValue}` : '';
  const told = typeText(type);
  return `const ${name}: ${told.length > 1200 ? `${told.slice(0, 1200)} ...` : told}${shown};`;
}

const BODIES = new Map([
  [Interface, (one) => fieldTable(one.children)],
  [
    TypeAlias,
    (one) => [code(aliasText(one)), fieldTable(one.type.declaration?.children)].join('\n\n'),
  ],
  [Class, members],
  [Variable, (one) => code(constantText(one))],
]);

export const hasPlace = ({ kind }) => BODIES.has(kind);

/** The page of the types of a folder. */
export function typesPage(folder, reflections) {
  const part = (one) =>
    `## ${one.name} {#${one.name.toLowerCase()}}\n\n${summaryOf(one.comment)}\n\n${BODIES.get(one.kind)(one)}`;
  const index = reflections.map(
    (one) =>
      `| [\`${one.name}\`](#${one.name.toLowerCase()}) | ${cell(firstSentence(one.comment))} |`,
  );
  const from = folder === 'settline' ? 'settline' : `settline/${folder}`;
  return `---
title: Types of ${from}
description: Every type, constant and class that ${from} exports, with all fields.
outline: false
aside: false
---

# Types of ${from}

| name | what it is |
| --- | --- |
${index.join('\n')}

${reflections.map(part).join('\n\n')}
`.replaceAll(/\n{3,}/g, '\n\n');
}
