import { source, type Source } from './source.js';

/** Sources on soil, compaction, frost, water and routes. Internal. */
export const GROUND_SOURCES = {
  'compaction-moisture': source(
    'FM 5-434 Earthmoving Operations, chapter 11 (read in copies)',
    '11-1, moisture of soil groups and the window of 2 percent',
  ),
  'conductivity-table': source(
    'Geotechnical Engineering: Soil and Foundation Principles and Practice',
    'Table 11.1, p. 234 (readings of the charts of 1952)',
  ),
  'conductivity-equations': source(
    'Equations behind the conductivity charts of 1949',
    'frozen and unfrozen, sandy and fine-grained soil',
    'memory',
  ),
  'surface-factors': source('TM 5-852-4 (UFC 3-130-04)', 'Table 4-1, n-factors'),
  'freezing-index-terms': source(
    'Glossary of permafrost terms (yamz)',
    'freezing index, four definitions',
  ),
  'freezing-index-course': source(
    'Army correspondence course EN5458, lesson 3',
    'freezing index and design freezing index',
  ),
  'latent-heat': source('UFC 3-130-05 (TM 5-852-5)', 'equation 12-3 and list of terms, p. 71'),
  'frost-depth-formula': source(
    'UFC 3-130-04 (TM 5-852-4)',
    'Figure 4-63, X = lambda sqrt(48 K n I / L)',
  ),
  'frost-depth-terms': source(
    'WSDOT pavement training modules: modified Berggren formula',
    'terms of the thermal ratio and the fusion parameter',
  ),
  'frost-depth-coefficient': source(
    'Analytical Studies of Freezing and Thawing of Soils (1953), as an open climate notebook of the University of Alaska implements it',
    'equation 2-33; heat capacity 0.17 + 0.75 w',
  ),
  'frost-susceptibility': source(
    'TI 850-02 (AFMAN 32-1125) Railroad design, March 2000',
    '6 b, shares finer than 0.02 mm',
  ),
  'frost-fines': source('CRREL Special Report 97-13', 'p. 17'),
  'frost-groups': source(
    'TM 5-822-5 Pavement design for roads',
    'chapter 18, table of frost groups',
    'memory',
  ),
  'frost-support': source('UFC 3-260-02 Pavement Design for Airfields', 'Table 3-5'),
  'frost-support-rule': source(
    'FM 5-430-00-1, Appendix G Frost design for roads',
    'required thickness: the smaller of bearing ratio and support index',
  ),
  'frost-penetration-limit': source(
    'UFC 3-260-02 Pavement Design for Airfields',
    'chapter 20, example 1 (b) and (c)',
  ),
  'county-foundations': source('Leicestershire Highway Design Guide', 'Table 34'),
  'permeable-sizing': source(
    'Low Impact Development stormwater planning and design guide (wiki): Permeable pavements: Sizing',
    'depth of stone bed; invert of the underdrain',
  ),
  'permeable-storage': source(
    'Faster edge restraints for permeable pavement (trade association newsletter)',
    'firm foundation',
  ),
  'runoff-table': source(
    'Runoff coefficients for the rational formula (course TSM 352, University of Illinois)',
    'table',
  ),
  'runoff-code': source('Davison (Michigan) code of ordinances', '1046.32'),
  'rational-method': source('Newsletter on the rational method', 'formula and table of C'),
  'outdoor-trails': source(
    'Outdoor Developed Areas: A Summary of Accessibility Standards for Federal Outdoor Developed Areas',
    '1017.7.1, Table 2',
  ),
  'outdoor-access-routes': source(
    'Outdoor Developed Areas: A Summary of Accessibility Standards for Federal Outdoor Developed Areas',
    '1016.7.1, Table 3, p. 42',
  ),
  'beach-access-routes': source(
    'Outdoor Developed Areas: A Summary of Accessibility Standards for Federal Outdoor Developed Areas',
    '1018.7.1, Table 6, p. 87',
  ),
  'forest-routes': source(
    'USDA Forest Service accessibility guidebook, outdoor recreation access routes',
    'slopes and resting intervals',
  ),
  'ramps-1991': source('1991 ADA Standards for Accessible Design', '4.8.2'),
  'walks-1991': source(
    'Self-evaluation of site access (university form that cites the 1991 guidelines)',
    '4.3.7',
  ),
  'ramp-runs': source('Ramp slopes (dimensions.guide)', 'slopes and runs'),
  'cross-slope-practice': source(
    'Requirements for sidewalk cross slopes (thread of a building code forum)',
    'text',
  ),
  'stone-57': source('Iowa DOT aggregate gradation table (metric), 2009', 'gradation no. 3'),
  'sand-zones': source('IS 383:2016, as a handbook reprints it', 'sand zones'),
  'grout-sand': source('UFGS 03372', '2.1.2.2'),
  'frost-base-page': source(
    'Frequently Asked Questions, 6th edition (page of a paver maker, 27 May 2015)',
    'what is the base made of: thickness in colder climates',
  ),
  'wet-base-clause': source(
    'Tech Spec 2 Construction of Interlocking Concrete Pavements (February 2020), read as others quote it',
    'base thickness: colder climates, continually wet or weak soils',
  ),
} as const satisfies Record<string, Source>;
