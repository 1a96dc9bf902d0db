/** Fields of a job, as a plan holds it, that are numbers without a unit. Internal. */
export const JOB_NUMBERS: ReadonlySet<string> = new Set([
  ...['compactedPerLoose', 'loosePerBank', 'compactedPerBank', 'radiusPerDiameter', 'fillFactor'],
  ...['moisture', 'baseMoisture', 'optimumMoisture', 'waste', 'breakage', 'reuse', 'share'],
  ...['minimum', 'holds', 'overlap', 'batter', 'edges', 'value', 'coefficient', 'efficiency'],
  ...['cbr', 'seasonDays', 'passes', 'subgradePasses', 'paverPasses', 'jointPasses'],
]);

/** Numbers of a plan and of its job that are whole. Internal. */
export const WHOLE: ReadonlySet<string> = new Set([
  ...['edge', 'edges', 'otherEdge', 'shedAtBuilding', 'digLongMitres', 'lift', 'setUp', 'setUps'],
  ...['whole', 'border', 'order', 'count', 'cut', 'bags', 'pieces', 'spikes', 'rolls', 'holds'],
  ...[
    'strip',
    'strips',
    'piecesPerStrip',
    'passes',
    'subgradePasses',
    'paverPasses',
    'jointPasses',
  ],
]);
