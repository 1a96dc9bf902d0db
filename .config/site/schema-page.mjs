// Every field of a job file, from its JSON Schema.
import { cell } from './comment-text.mjs';

const isQuantity = (node) =>
  node.properties?.value !== undefined && node.properties.unit !== undefined;

/** The objects below a field: itself, the entries of its list, and each form that it may have. */
function objectsOf(node, name) {
  const forms = (node.anyOf ?? []).flatMap((form) => objectsOf(form, name));
  const entries = node.items === undefined ? [] : objectsOf(node.items, `${name}[]`);
  const own = node.properties === undefined || isQuantity(node) ? [] : [{ node, name }];
  return [...own, ...forms, ...entries];
}

const list = (words) => words.map((word) => `\`${JSON.stringify(word)}\``).join(', ');

/** How a value is written. */
function formOf(node) {
  if (node.const !== undefined) return list([node.const]);
  if (node.enum !== undefined) return list(node.enum);
  if (node.type === 'array') return countOf(node);
  const words = node.anyOf?.find(({ type, description }) => type === 'string' && description);
  if (words !== undefined) return words.description;
  if (node.anyOf !== undefined) return 'one of several forms';
  return typeof node.type === 'string' ? node.type : '';
}

function countOf({ minItems, maxItems }) {
  if (minItems === undefined && maxItems === undefined) return 'list';
  const most = maxItems === undefined ? 'or more' : `to ${maxItems}`;
  return `list, ${minItems ?? 0} ${most}`;
}

function rowsOf(node, name, isRequired) {
  const mark = isRequired ? '' : ', optional';
  const row = `| \`${name}\`${mark} | ${cell(formOf(node))} | ${cell(node.description ?? '')} |`;
  const seen = new Set();
  const rows = objectsOf(node, name).flatMap(({ node: object, name: within }) =>
    Object.entries(object.properties).flatMap(([key, field]) => {
      const path = `${within}.${key}`;
      if (seen.has(path)) return [];
      seen.add(path);
      return rowsOf(field, path, object.required?.includes(key) === true);
    }),
  );
  return [row, ...rows];
}

const HEAD = '| field | how it is written, range | what it is |\n| --- | --- | --- |';

/** The page of all fields. */
export function schemaPage(schema) {
  const fields = Object.entries(schema.properties).map(([name, node]) => ({
    name,
    rows: rowsOf(node, name, schema.required.includes(name)),
  }));
  const single = fields.filter(({ rows }) => rows.length === 1).flatMap(({ rows }) => rows);
  const parts = [
    `## The job itself\n\n${HEAD}\n${single.join('\n')}`,
    ...fields
      .filter(({ rows }) => rows.length > 1)
      .map(
        ({ name, rows }) =>
          `## ${name} {#field-${name.toLowerCase()}}\n\n${HEAD}\n${rows.join('\n')}`,
      ),
  ];
  return `---
title: Fields of the job file
description: Every field of a job file with the way it is written, its range and what it means, from the JSON Schema.
outline: [2, 2]
---

# Fields of the job file

This list is made from the [JSON Schema](../../job.schema.json) of job files. [The job file](../reference/job-file.md) explains the parts and gives examples. \`[]\` stands for every entry of a list.

${parts.join('\n\n')}
`;
}
