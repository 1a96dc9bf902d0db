/** A whole number with its decimal point put in: `-1234, 2` is `-12.34`. Internal. */
export function digitsText(lastPlaces: number | bigint, places: number, point = '.'): string {
  if (places === 0) return `${lastPlaces}`;
  const sign = lastPlaces < 0 ? '-' : '';
  const digits = `${lastPlaces}`.slice(sign.length).padStart(places + 1, '0');
  return `${sign}${digits.slice(0, -places)}${point}${digits.slice(-places)}`;
}
