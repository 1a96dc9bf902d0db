// Writes THIRD-PARTY-NOTICES.md: the licence of every package of which the build took in code.
// Part of build.mjs.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Packages with code in the output files, by the reports of the bundler. */
export function packagesIn(reports) {
  const files = reports.flatMap(({ outputs }) =>
    Object.values(outputs).flatMap(({ inputs }) =>
      Object.entries(inputs).flatMap(([file, { bytesInOutput }]) =>
        bytesInOutput > 0 ? [file] : [],
      ),
    ),
  );
  const names = files.flatMap((file) => {
    const [, name] = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file) ?? [];
    return name === undefined ? [] : [name];
  });
  return [...new Set(names)].sort();
}

/** The notice of one package. */
export function noticeOf(root, name) {
  const folder = join(root, 'node_modules', name);
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((one) => /^licen[cs]e(?:\.(?:md|txt))?$/i.test(one));
  if (file === undefined) throw new Error(`${name} has no licence file: it cannot be built in`);
  const text = readFileSync(join(folder, file), 'utf8').trim().replaceAll('\r\n', '\n');
  return `## ${name} ${version} (${license})\n\n\`\`\`text\n${text}\n\`\`\`\n`;
}

/** Writes the notices for what the reports say was built in. */
export function writeNotices(root, reports) {
  const names = packagesIn(reports);
  const head = `# Third-party notices

The files under \`dist\` hold code of the packages below. Each comes under its own licence.
`;
  const text = [head, ...names.map((name) => noticeOf(root, name))].join('\n');
  writeFileSync(join(root, 'THIRD-PARTY-NOTICES.md'), text);
}
