// Writes docs/reference/error-codes.md from the lists in the build.
import { writeFileSync } from 'node:fs';
import { ERROR_CODES } from '../dist/index.js';
import { READING_REASONS } from '../dist/units/index.js';

const rowsOf = (list) =>
  Object.entries(list)
    .map(([name, meaning]) => `| \`${name}\` | ${meaning} |`)
    .join('\n');

writeFileSync(
  'docs/reference/error-codes.md',
  `---
description: Every error code with its meaning, what doc comments call the reading codes, and why a text cannot be read.
---

# Error codes

Every refusal is a \`SettlineError\` with \`code\`, \`path\`, \`params\` and \`issues\` (all faults of the
call). A code never changes its meaning; the message may. Whole jobs are refused with \`JOB_INVALID\`,
and each fault in \`issues\` has a code of its own.

## Reading codes

Doc comments say "the reading codes" for the codes that reading any quantity in a field can give:
\`TEXT_UNREADABLE\`, \`UNIT_MISSING\`, \`UNIT_UNKNOWN\`, \`UNIT_AMBIGUOUS\`, \`DIMENSION_MISMATCH\`,
\`NOT_FINITE\`, \`NOT_A_NUMBER\`, \`DIVISION_BY_ZERO\`, \`TOO_LONG\`, \`WRONG_TYPE\` and \`OUT_OF_RANGE\`.

## All codes

| code | meaning |
| --- | --- |
${rowsOf(ERROR_CODES)}

## Why text cannot be read

\`TEXT_UNREADABLE\` has one of these in \`params.reason\`. For a measure,
\`params.position\` is the position in the text, counted from 0, and \`params.text\` is the text, cut
after 40 characters. \`READING_REASONS\` of \`settline/units\` lists the same reasons.

| reason | meaning |
| --- | --- |
${rowsOf(READING_REASONS)}
`,
);
