/** The example sites, loaded as text when one is taken. */
export const SITES = {
  'cedar-court': {
    name: 'Cedar Court: a parking court and a terrace, in feet and inches',
    load: () => import('../../../../examples/cedar-court.json?raw'),
  },
  'mill-garth': {
    name: 'Mill Garth, in metres',
    load: () => import('../../../../examples/mill-garth.json?raw'),
  },
  'heron-yard': {
    name: 'Heron Yard',
    load: () => import('../../../../examples/heron-yard.json?raw'),
  },
  'slate-wharf': {
    name: 'Slate Wharf: fixed levels, spot heights, marked lines, a tree',
    load: () => import('../../../../examples/slate-wharf.json?raw'),
  },
} as const;

/** Name of an example site. */
export type SiteName = keyof typeof SITES;

/** True for the name of an example site. */
export const isSiteName = (name: string): name is SiteName => Object.hasOwn(SITES, name);
