// The page of checked figures: a section for each publication, a row for each figure.
import { escapeHtml } from './escape-html.mjs';
import { STATUS } from './sources.mjs';

const KINDS = {
  printed: 'printed',
  derived: 'derived',
  'reading of a chart': 'read off a chart',
  misprint: 'misprint',
};

/** Folders that nearly every check imports beside the one that it checks. */
const COMMON = new Set(['units', 'sources', 'errors']);

/** The folders of the library that a file of checks calls. */
export function foldersOf(text) {
  const all = [
    ...new Set([...text.matchAll(/from 'settline\/([a-z-]+)'/g)].map(([, name]) => name)),
  ];
  const own = all.filter((name) => !COMMON.has(name));
  return own.length === 0 ? all : own;
}

/** Difference of two plain numbers, as exact as their digits; nothing for other texts. */
function difference({ right, printed: shown, computed }) {
  const printed = right ?? shown;
  const [a, b] = [printed, computed].map((text) =>
    /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : NaN,
  );
  if (Number.isNaN(a) || Number.isNaN(b)) return printed === computed ? 'same' : '';
  return a === b ? '0' : String(Number((b - a).toPrecision(3)));
}

function rowOf({ section, test, file }, figure) {
  const cells = [
    section,
    test,
    KINDS[figure.kind],
    figure.right === undefined ? figure.printed : `${figure.printed}, should be ${figure.right}`,
    figure.computed,
    difference(figure),
    figure.because === undefined ? figure.half : `${figure.half} (${figure.because})`,
    figure.ok ? 'holds' : 'fails',
  ];
  const marks = cells.map((text) => `<td>${escapeHtml(text)}</td>`).join('');
  return `<tr class="kind-${figure.kind.split(' ')[0]}" data-file="${file}">${marks}</tr>`;
}

const counted = (count, word) => `${count} ${word}${count === 1 ? '' : 's'}`;

const HEADS = [
  'section',
  'check',
  'kind',
  'printed',
  'computed',
  'difference',
  'allowed',
  'result',
];

function sectionOf(id, checks, folders) {
  const [{ title, status }] = checks;
  const own = [...new Set(checks.flatMap(({ file }) => folders.get(file) ?? []))].sort();
  const rows = checks.flatMap((check) => check.figures.map((figure) => rowOf(check, figure)));
  const head = HEADS.map((text) => `<th scope="col">${text}</th>`).join('');
  return `<section class="checked" data-source="${id}" data-folders="${own.join(' ')}" v-pre>

## ${escapeHtml(title)} {#of-${id}}

${counted(checks.length, 'check')}, ${counted(rows.length, 'figure')}. Status: ${STATUS[status]}. Checks ${own.map((name) => `\`settline/${name}\``).join(', ')}.

<div class="scroll" tabindex="0" role="group" aria-label="Figures of ${escapeHtml(title)}"><table><thead><tr>${head}</tr></thead><tbody>${rows.join('')}</tbody></table></div>

</section>`;
}

/** The page; `folders` tells which folders each file of checks calls. */
export function checkedPage(checks, folders) {
  const bySource = Map.groupBy
    ? Map.groupBy(checks, ({ source }) => source)
    : checks.reduce(
        (map, one) => map.set(one.source, [...(map.get(one.source) ?? []), one]),
        new Map(),
      );
  const figures = checks.flatMap((one) => one.figures);
  const count = (kind) => figures.filter((one) => one.kind === kind).length;
  return `---
title: Checked figures
description: Every figure of a publication that the tests compare with settline, with what was printed and what is computed.
outline: false
aside: false
---

# Checked figures

The tests compare ${figures.length} figures of ${bySource.size} publications with what the library computes. ${count('printed')} are printed there. ${count('derived')} are worked out from printed figures. ${count('reading of a chart')} are read off a chart. ${count('misprint')} are misprints: the row shows the printed figure, and the test holds that the library does not agree with it. The build of this page fails if a check fails.

*Allowed* is the largest difference that passes: half of the last printed place, unless the figure is good to less.

<checked-filter></checked-filter>

${[...bySource].map(([id, list]) => sectionOf(id, list, folders)).join('\n\n')}
`;
}
