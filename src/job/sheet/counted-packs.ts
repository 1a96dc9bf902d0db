/**
 * Packs as counted: `1 pallet`, `5 pallets`, `3 boxes`. A name that is no plain word, or is plural
 * already, stays as the job gives it. Internal.
 */
export const countedPacks = (name: string, count: number): string =>
  `${count} ${count === 1 ? name : plural(name)}`;

function plural(name: string): string {
  if (!/[a-z]$/.test(name)) return name;
  if (/(?:x|ch|sh|ss)$/.test(name)) return `${name}es`;
  if (name.endsWith('s')) return name;
  return /[^aeiou]y$/.test(name) ? `${name.slice(0, -1)}ies` : `${name}s`;
}
