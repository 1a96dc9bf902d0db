// As many jobs as are wanted, made from the sites beside this file: the same number, the same job.
import { readFileSync } from 'node:fs';

const SITES = ['cedar-court', 'mill-garth', 'heron-yard', 'slate-wharf'].map((name) =>
  JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')),
);

/** A number from 0 up to 1, the same for the same seed. */
function share(seed) {
  let mixed = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
}

/** The job of a number: one of the sites with another string; one in thirty is at fault. */
export function jobOf(number) {
  const site = SITES[number % SITES.length];
  const string = `${(14 + Math.floor(share(number) * 64) / 16).toString()} in`;
  const isFaulty = share(number + 0.5e9) < 0.03;
  return { ...site, name: `Site ${number}`, stringHeight: isFaulty ? `${number} lb` : string };
}
