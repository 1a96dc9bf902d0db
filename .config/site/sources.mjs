// Ids of sources as links to the page that lists them.

/** What a status means to a reader. */
export const STATUS = {
  read: 'read',
  memory: 'from memory: confirm it before use',
  'common-practice': 'common practice, no source',
  derived: 'geometry or arithmetic, needs no publication',
};

const path = (depth) => `${'../'.repeat(depth)}sources.md`;

/** The words behind `@source`: ids, each as title and section with a link, or text as it is. */
export function sourceText(text, sources, depth) {
  const ids = text.split(/[\s,]+/).filter((word) => word in sources);
  const rest = text.replaceAll(/[\w-]+/g, (word) => (word in sources ? '' : word)).trim();
  const isListOfIds = /^[\s,;.]*(?:and[\s,;.]*)*$/.test(rest);
  if (!isListOfIds) return [linkIds(text, sources, depth)];
  return ids.map((id) => {
    const { title, section, status } = sources[id];
    const mark = status === 'read' || status === 'derived' ? '' : ` (${STATUS[status]})`;
    return `[${title}](${path(depth)}#${id}), ${section}${mark}`;
  });
}

const linkIds = (text, sources, depth) =>
  text.replaceAll(/`?([a-z][\w-]*-[\w-]+)`?/g, (whole, id) =>
    id in sources ? `[${sources[id].title}](${path(depth)}#${id}), ${sources[id].section}` : whole,
  );

/** The page of all sources, with the checks against each. */
export function sourcesPage(sources, publications, checks) {
  const counts = new Map();
  for (const { source, figures } of checks) {
    counts.set(source, (counts.get(source) ?? 0) + figures.length);
  }
  const row = ([id, { title, section = '', status, address }]) => {
    const name = address === undefined ? title : `${title}, \`${address}\``;
    const count = counts.get(id) ?? 0;
    const checked = count === 0 ? '' : `[${count}](checked-figures.md#of-${id})`;
    return `| <a id="${id}"></a>\`${id}\` | ${name} | ${section} | ${STATUS[status]} | ${checked} |`;
  };
  const head = (third) =>
    `| id | title | ${third} | status | figures checked |\n| --- | --- | --- | --- | ---: |`;
  return `---
title: Sources
description: Every publication that a figure or a formula of settline is traced to, with section and status.
aside: false
---

# Sources

Every figure and every formula of the library carries the id of one row of the first table. The status says whether that part of the publication was read. [Sources and their limits](../explanation/sources.md) says what the status is worth.

## Sources that the library quotes

${[head('section'), ...Object.entries(sources).map(row)].join('\n')}

## Publications that only a check cites

The tests compare results with figures from these. The library quotes none of them.

${[head('section'), ...Object.entries(publications).map(row)].join('\n')}
`;
}
