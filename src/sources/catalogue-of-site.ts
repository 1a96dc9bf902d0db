import { source, type Source } from './source.js';

/** Sources on what lies in and round the dig. Internal. */
export const SITE_SOURCES = {
  'vehicle-weights': source(
    'FHWA, Questions and Answers About Vehicle Size and Weight',
    '23 CFR 658.17 Weight',
  ),
  'bridge-formula': source(
    'Bridge Formula Weights (Federal Highway Administration), read in copies',
    'formula, rounding to 500 lb, exception for two tandems',
  ),
  'axle-weight-table': source(
    'California Vehicle Code 35551 as printed in Assembly Bill 1953 (2023-2024)',
    'table of weights by distance between extreme axles',
  ),
  'excavation-rules': source(
    '29 CFR 1926 Subpart P Excavations (read in copies)',
    '1926.651 and 1926.652, which sets 34 degrees for ground not classified',
  ),
  'excavation-slopes': source(
    '29 CFR 1926 Subpart P, Appendix B (read in copies that restate the table)',
    'Table B-1',
  ),
  'excavation-definitions': source(
    '29 CFR 1926 Subpart P, Appendix B',
    '(b) definitions, short term',
  ),
  'plumbing-code': source('Uniform Plumbing Code, as reprinted', '314.1, trenches beside footings'),
  'excavation-numbers': source(
    'Excavation by the Numbers (sheet of a contractor association)',
    'list of numbers',
  ),
  'silica-table-1': source(
    '29 CFR 1926.1153 Respirable crystalline silica (same table in Title 8 CCR 1532.3)',
    'Table 1, rows i, ii and iv',
  ),
  'tolerance-zones': source(
    'CGA Best Practices 5-19 and pages of state one-call centres',
    'tolerance zone, colours',
    'memory',
  ),
  'zone-florida': source('One-call page of Florida (sunshine811.com)', 'tolerance zone'),
  'zone-mississippi': source('One-call page of Mississippi (ms811.org)', 'approximate location'),
  'zone-maryland': source(
    'One-call page of Maryland and the District of Columbia (missutility.net)',
    'tolerance zone',
  ),
  'zone-ohio': source('Ohio Revised Code', '3781.25(E)'),
  'zone-indiana': source(
    'Dig with care, page of an Indiana electric cooperative that quotes state law',
    'question 5',
  ),
  'locate-colours': source('Tennessee Code', '65-31-108(a)(1)(A)'),
  'tree-extension': source('NC State Extension, tree protection zone guidelines', 'Figure 3'),
  'tree-code': source('Vancouver Municipal Code (Washington)', '20.170.100, root protection zone'),
  'tree-city-page': source(
    'City of Edina (Minnesota): What is a critical root zone?',
    'answer and example',
  ),
  'tree-council': source(
    'Determining Critical Root Zone (North Carolina urban forest council)',
    'least radius and example',
  ),
  'tree-county-code': source('Ventura County Ordinance Code (California)', '8178-7.4.3'),
  'tree-austin': source('City of Austin: Tree and Natural Area Preservation', 'critical root zone'),
  'tree-stormwater': source(
    'Minnesota Stormwater Manual: Protection of existing trees on construction sites',
    'underground damage to a tree: roots within the drip line',
  ),
  'tree-trench-study': source('Root Pruning and Stability of Young Willow Oak', 'abstract'),
  'fm-5-430': source('FM 5-430-00-1', 'Appendix H, geotextile design for unpaved aggregate roads'),
  'production-handbook': source(
    'Performance Handbook, Edition 47 (of an equipment maker)',
    'pp. 18-30, 18-31 and 30-2',
  ),
  'haul-notes': source(
    'Construction engineering management course notes, volume 2',
    'chapter 17, balance of trucks and loader',
    'memory',
  ),
  'hand-dig-table': source(
    'Excavate & Reduce Levels (Guild of Project Controls compendium)',
    'excavate by hand, clay or heavy soil',
  ),
  'earthmoving-handbook': source(
    'Moving the Earth: The Workbook of Excavation',
    'p. 2.45, cones and ridges',
  ),
} as const satisfies Record<string, Source>;
