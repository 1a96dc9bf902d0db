// Writes job.schema.json, the JSON Schema of a job file for editors, from the build. Part of build.mjs.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Writes the schema that the built library describes its job files with. */
export async function writeJobSchema(root) {
  const built = pathToFileURL(join(root, 'dist', 'job', 'index.js'));
  const { jobJsonSchema } = await import(built.href);
  writeFileSync(join(root, 'job.schema.json'), `${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
}
