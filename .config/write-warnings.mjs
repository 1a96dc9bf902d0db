// Writes docs/reference/warnings.md: what each warning of a plan says, with the names of its figures.
// Run it after a warning or its words were changed: npm run error-codes
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = join(import.meta.dirname, '..');
const WORDS = join(root, 'src', 'job', 'sheet', 'words', 'warning-words.ts');

/** The words of the sources; their file imports types alone. */
async function words() {
  const { outputText } = ts.transpileModule(readFileSync(WORDS, 'utf8'), {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
  });
  const { WARNING_WORDS } = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);
  return WARNING_WORDS;
}

/** Pairs of a code and what it says: one text, or one for each way to say it. */
export async function warningTexts() {
  return Object.entries(await words()).map(([code, say]) => {
    const texts = ['beyond-rod', 'above-sight'].map((reach) =>
      say({ subject: '`subject`', rule: '`rule`', say: (name) => `\`${name}\``, reach }),
    );
    return [code, [...new Set(texts)].join(' Or: ')];
  });
}

/** The page. */
export async function warningsPage() {
  const texts = (await warningTexts()).sort(([a], [b]) => (a < b ? -1 : 1));
  const rows = texts.map(([code, text]) => `| \`${code}\` | ${text} |`);
  return `---
description: Every warning of a plan by its code, in the words of the sheet, with the names of its figures.
---

# Warnings of a plan

Each of \`plan.warnings\` has a \`code\`, a \`subject\` and \`values\`. \`describeWarning\` puts it into these
words, where \`like this\` stands for the subject or a field of \`values\`. To say it in another language,
write words of your own for each code, and the values with \`formatFor\`. A code never changes its
meaning; the words may. [What a plan warns of](job-file.md#what-a-plan-warns-of) has the limits.

| code | what it says |
| --- | --- |
${rows.join('\n')}

No warning is no proof that nothing is wrong.
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(root, 'docs', 'reference', 'warnings.md'), await warningsPage());
}
