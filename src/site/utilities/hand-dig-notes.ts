/** Notes of every hand-dig result. Internal. */
export const HAND_DIG_NOTES: readonly string[] = Object.freeze([
  'Use hand tools or a vacuum inside a zone, whatever depth the marks or a test hole show.',
  'Marks give no depth. Private lines (irrigation, gates, lamps) are often not marked.',
  'If stripping the old surface removes the marks, stop and have the lines marked again before you dig on.',
  'Report any contact with a line to its owner, even a scratch. If you smell gas, stop, get everyone away, and call the emergency number and the gas company from well away.',
]);
