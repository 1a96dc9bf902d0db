/** The English labels that several drawings have. */
export const COMMON_TEXTS = {
  'edge-open': 'open',
  'edge-adjoining': 'adjoining',
  'edge-restraint': 'restraint',
  'edge-slab': 'slab',
  'edge-building': 'building',
  'caution-dig':
    'Have buried lines located and marked before you dig. An open dig can cave in: a competent person decides on its sides.',
  'no-room': 'No room in the picture for: {labels}.',
  'no-room-count': '{count} labels have no room in the picture; the sheet has them.',
  'stake-off': '{stake}: {offset} {side}',
  'stake-out': '{stake}: {offset} {side} OUT',
} as const;
