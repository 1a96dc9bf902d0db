// Writes docs/reference/error-codes.md from the list in src/errors.ts.
import { readFileSync, writeFileSync } from 'node:fs';
import ts from 'typescript';

const { outputText } = ts.transpileModule(readFileSync('src/errors.ts', 'utf8'), {
  compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
});
const { ERROR_CODES } = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);

const rows = Object.entries(ERROR_CODES).map(([code, meaning]) => `| \`${code}\` | ${meaning} |`);
writeFileSync(
  'docs/reference/error-codes.md',
  `# Error codes

Every refusal is a \`SettlineError\` with \`code\`, \`path\`, \`params\` and \`issues\` (all faults of the
call). A code never changes its meaning; the message may. Whole jobs are refused with \`JOB_INVALID\`,
and each fault in \`issues\` has a code of its own.

| code | meaning |
| --- | --- |
${rows.join('\n')}
`,
);
