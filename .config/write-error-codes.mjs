// Writes docs/reference/error-codes.md from the lists in the build, and from what the sources give
// with each code.
import { writeFileSync } from 'node:fs';
import { ERROR_CODES } from '../dist/index.js';
import { READING_REASONS } from '../dist/units/index.js';
import { faultParams, PARAMS } from './fault-params.mjs';

const params = faultParams();
const keysOf = (code) => (params.get(code) ?? []).map((key) => `\`${key}\``).join(', ');
const codeRows = Object.entries(ERROR_CODES)
  .map(([code, meaning]) => `| \`${code}\` | ${meaning} | ${keysOf(code)} |`)
  .join('\n');

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

An app that says faults in words of its own has \`code\`, \`path\` and \`params\` for them.
[What \`params\` holds](#what-params-holds) explains the last column of the codes.

## Reading codes

Doc comments say "the reading codes" for the codes that reading any quantity in a field can give:
\`TEXT_UNREADABLE\`, \`UNIT_MISSING\`, \`UNIT_UNKNOWN\`, \`UNIT_AMBIGUOUS\`, \`DIMENSION_MISMATCH\`,
\`NOT_FINITE\`, \`NOT_A_NUMBER\`, \`DIVISION_BY_ZERO\`, \`TOO_LONG\`, \`WRONG_TYPE\` and \`OUT_OF_RANGE\`.

## All codes

| code | meaning | \`params\` may have |
| --- | --- | --- |
${codeRows}

## What \`params\` holds

Values of the message, as text or numbers. A code is given in several places, and each has those that
its message needs.

| field | what it is |
| --- | --- |
${rowsOf(PARAMS)}

## Why text cannot be read

\`TEXT_UNREADABLE\` has one of these in \`params.reason\`. For a measure,
\`params.position\` is the position in the text, counted from 0, and \`params.text\` is the text, cut
after 40 characters. \`READING_REASONS\` of \`settline/units\` lists the same reasons.

| reason | meaning |
| --- | --- |
${rowsOf(READING_REASONS)}
`,
);
