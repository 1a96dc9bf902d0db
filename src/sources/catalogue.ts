import { GROUND_SOURCES } from './catalogue-of-ground.js';
import { PAVING_SOURCES } from './catalogue-of-paving.js';
import { SITE_SOURCES } from './catalogue-of-site.js';
import { source, type Source, type SourceStatus } from './source.js';

/** Every source that a figure or formula of the library is traced to. */
export const SOURCES = Object.freeze({
  'nist-hb44': source('NIST Handbook 44 (2026 edition)', 'Appendix C, tables of units'),
  'nist-sp811': source(
    'NIST Special Publication 811 (2008), Guide for the Use of the SI',
    'Appendix B.7 (rounding) and B.8 (factors)',
  ),
  'survey-foot-notice': source(
    '85 FR 62698 (5 October 2020), deprecation of the US survey foot',
    'final determination',
  ),
  'astm-e29': source(
    'ASTM E29, Using Significant Digits in Test Data, as named in Iowa DOT Materials I.M. 202',
    '6.4.3 and 6.4.4, an exact 5 goes to the even digit',
  ),
  'paver-tolerances': source(
    'Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade association guide)',
    'tolerance tables',
  ),
  'paver-construction': source(
    'PAV-TEC-002-22 Construction of Interlocking Concrete Pavements',
    'Purpose',
  ),
  'edge-restraints': source(
    'Tech Spec 3 Edge Restraints for Interlocking Concrete Pavements',
    'Design Considerations',
  ),
  'equipment-operator': source(
    'Equipment Operator, Basic (NAVEDTRA 14081)',
    'p. 15-42, base lifts',
  ),
  'block-paving-guide': source(
    'Concrete paving day 2 (notes on a trade guide)',
    'base course and bedding sand',
  ),
  'reinstatement-lifts': source(
    'Specification for the Reinstatement of Openings in Roads, 3rd edition (Scotland)',
    'Appendix A8, Table A8.1',
  ),
  'brick-paving-1992': source(
    'Masonry Magazine, December 1992, flexible brick paving',
    'p. 24, Figure 1',
  ),
  'soil-factors-text': source(
    'Engineering Aid, Advanced (NAVEDTRA 14070)',
    'Table 10-1 Soil Conversion Factors, sentence with the example of sand',
  ),
  'fm-5-434': source(
    'FM 5-434 Earthmoving Operations (15 June 2000)',
    'Table 1-1 Soil conversion factors',
    'memory',
  ),
  'state-aggregate-weights': source('WSDOT Design Manual M 22-01, chapter 620', 'Exhibit 620-1'),
  'state-debris-weights': source(
    'Solid Waste Cleanup Program Weights and Volumes for Project Estimates (CalRecycle)',
    'table of pounds per cubic yard',
  ),
  'debris-training-sheet': source(
    'Construction and Demolition Debris Weight to Volume Conversion',
    'table, asphalt and concrete',
  ),
  'army-truck-weights': source(
    "TM 9-2320-366-10-1 operator's manual, Table 2-15 Material Weight by Volume",
    'p. 2-381',
  ),
  'ada-ramps': source('2010 ADA Standards for Accessible Design', '405.2 and Table 405.2'),
  'ada-counter-slope': source('2010 ADA Standards for Accessible Design', '406.2'),
  'route-slope': source(
    'California Building Code 2013 (the note on the page ties it to 403.3 of the 2010 ADA Standards)',
    '11B-403.3',
  ),
  'ada-level-change': source(
    '1991 ADA Standards for Accessible Design',
    '4.5.2 (section 303 of 2010 keeps the figures)',
  ),
  'ramp-cross-slope': source('California Building Code, aligned with ADA 405.3', '11B-405.3'),
  'residential-code': source(
    'International Residential Code 2006, as quoted among inspectors',
    'R401.3 and its exception, drainage at foundations',
  ),
  'nhbc-drives': source('NHBC Standards 2021', '10.2.6 Drives, paths and landscaping'),
  'driveway-profiles': source('TxDOT Roadway Design Manual', 'appendix on driveways, profiles'),
  'masonry-handbook': source('Masonry and Concrete (handbook)', 'p. 283, steps'),
  'level-booking': source(
    'University civil-engineering levelling lecture notes (height of plane of collimation)',
    'worked table, steps 1 to 4',
    'memory',
  ),
  'grade-with-a-level': source(
    'Equipment Operator, Basic (NAVEDTRA 14081)',
    'p. 15-30, checking grade with a level instrument, Figures 15-51 to 15-53',
  ),
  'two-peg-test': source('Two-peg test worked answer', 'problem 2.1', 'memory'),
  'laser-reversal': source(
    'Rotating-laser operating instructions, 180-degree reversal check',
    'levelling accuracy check, p. 27',
    'memory',
  ),
  'earth-curvature': source(
    'Computing Error Due to Curvature and Refraction',
    'coefficients per square kilometre, which a sphere of 12 740 km and 1/7 give',
  ),
  'misclosure-rules': source(
    'Allowable misclosure formulas of several levelling texts',
    'rules by distance and by set-ups',
    'memory',
  ),
  'nist-tn1297': source('NIST Technical Note 1297 (1994)', '6.2 and its note, coverage factor'),
  'handbook-functions': source(
    'Handbook of Mathematical Functions (National Bureau of Standards)',
    '26.5.8 and 26.7.1, incomplete beta function and Student distribution',
    'memory',
  ),
  'outlier-guidance': source(
    'Improved critical values for extreme normalized and studentized residuals in Gauss-Markov models',
    'abstract: the error probability is divided by the number of residuals',
  ),
  'curve-stakeout': source(
    'Engineering Aid, Advanced (NAVEDTRA 14070)',
    'curves: middle ordinate, chords and deflection angles',
  ),
  'squaring-lines': source(
    'Frame Structures, Subcourse EN0069 (army correspondence course)',
    'lesson 1, squaring building lines: diagonals and 3-4-5',
  ),
  ...SITE_SOURCES,
  ...PAVING_SOURCES,
  ...GROUND_SOURCES,
  derived: source('Geometry and arithmetic', 'worked out here', 'derived'),
  'common-practice': source('Common practice, no source', 'trade use', 'common-practice'),
  memory: source('From memory, no source read', 'confirm before use', 'memory'),
} satisfies Record<string, Source>);

/** The id of a source: the key of {@link SOURCES}. */
export type SourceId = keyof typeof SOURCES;

/** How far the figures of a source can be traced. Internal. */
export const statusOf = (id: SourceId): SourceStatus => SOURCES[id].status;
