// Writes docs/reference/error-codes.md from the list in src/errors.ts (built into dist first).
import { writeFileSync } from 'node:fs';
import { ERROR_CODES } from 'settline';

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
