/**
 * Meaning of the colours of locate marks. Sources: `locate-colours` (red to green),
 * `tolerance-zones` (pink and white).
 */
export const LOCATE_COLOURS = Object.freeze({
  red: 'electric',
  yellow: 'gas, oil, steam',
  orange: 'communication',
  blue: 'potable water',
  purple: 'reclaimed water, irrigation, slurry',
  green: 'sewer, drain',
  pink: 'temporary survey (also unknown)',
  white: 'proposed excavation',
});
