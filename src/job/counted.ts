/**
 * Things as counted: `1 pallet`, `5 pallets`, `3 boxes`. A noun that is no plain word, or is plural already,
 * stays as it is. Internal.
 */
export const counted = (count: number, noun: string): string =>
  `${count} ${count === 1 ? noun : plural(noun)}`;
function plural(name: string): string {
  if (!/[a-z]$/.test(name)) return name;
  if (/(?:x|ch|sh|ss)$/.test(name)) return `${name}es`;
  if (name.endsWith('s')) return name;
  return /[^aeiou]y$/.test(name) ? `${name.slice(0, -1)}ies` : `${name}s`;
}
