import type { SourceStatus } from 'settline/sources';

/** A publication that only a check cites. */
interface Publication {
  readonly title: string;
  /** `read` where the title is a printed one or an address leads to the page, else `memory`. */
  readonly status: Extract<SourceStatus, 'read' | 'memory'>;
  readonly address?: string;
}

const titled = (title: string): Publication => ({ title, status: 'read' });
const page = (title: string, address: string): Publication => ({ title, status: 'read', address });
/** Read once, but its printed title is not known: nobody can look it up from this description. */
const described = (title: string): Publication => ({ title, status: 'memory' });

/** Publications of worked examples and figures that the library itself does not quote. */
export const PUBLICATIONS = {
  // lengths, slopes, levels
  'training-slides-gradients': described('Lines, levels and gradients (training slides)'),
  'grades-article': described('Decimal feet to feet, inches and eighths (construction grades)'),
  'surveying-definitions': titled('Definitions of surveying and related terms'),
  'geology-lab': described('Geology lab page: apparent dip and interpolation'),
  'sewer-rails-question': described('Sight rails on a 1 % sewer (question page)'),
  'sewer-inverts-problem': described('Sewer invert list on -1 % (problem)'),
  'sewer-1-in-90': page(
    'Question page: sewer from W to X at 1 in 90',
    'https://askfilo.com/user-question-answers-smart-solutions/a-150-m-sewer-falls-from-w-to-x-at-a-gradient-of-1-90-the-3339303033333435',
  ),
  'elementary-surveying': described('Elementary surveying textbook, pipeline grade stakes'),
  'three-point-exercise': described('Three-point exercise with an exact plane'),
  'open-surveying-library': titled('Open Access Surveying Library'),
  'civil-calculations': titled('Handbook of Civil Engineering Calculations'),
  'vertical-curve-forum': described('Forum check of a vertical curve'),
  'unequal-sights': page(
    'Question page: level set up 25 m from peg A and 50 m from peg B',
    'https://curioustab.com/level-when-set-up-25-m-peg-50-m-peg-b-reads-2847-staff-held-66998',
  ),
  'pegs-80-m': page(
    'Question page: dumpy level set up midway between pegs 80 m apart',
    'https://curioustab.com/dumpy-level-set-up-midpoint-between-pegs-b-80-m-apart-staff-66910',
  ),
  'pegs-100-m': described('Two-peg problem, pegs 100 m apart'),
  'engineering-surveying-exercise': described('Engineering surveying exercise: two pegs, 3 mm'),
  'collimation-explanation': described('Collimation error: worked size of the error'),
  'levelling-fundamentals': described('Differential levelling fundamentals'),
  'agricultural-engineering': described('Agricultural engineering: definition of the foresight'),
  'falling-grade-solution': described('Grade rod along a falling grade (exam-style solution)'),
  'grade-check-question': described('Grade check question'),
  'rounding-note': described('Rounding-error note'),
  'level-booking-slip': described('Reduced-level booking example (height of instrument)'),
  'survey-review': titled('Civil Engineering Survey Review, 3rd edition'),
  'rise-and-fall-example': described(
    'Levelling example 2 (rise and fall beside plane of collimation)',
  ),
  'misclosure-slides': described('Levelling chapter slides: sharing a misclosure'),
  'level-circuit-problem': described('Level circuit of 30.5 km, misclosure shared by distance'),
  'benchmark-circuit': described('Differential levelling circuit between two bench marks'),
  'curvature-feet': page(
    'Answers page: putting the curvature of the earth into account',
    'https://mail.aboutcivil.org/answers/856/putting-the-curvature-the-earth-account-how-leveling-carried',
  ),
  'rounding-procedure': titled('Iowa DOT Materials I.M. 202, Procedure for rounding data'),
  // stakes and curves
  'deflection-lecture': described('Surveying lecture, deflection-angle method (worked example)'),
  'horizontal-curve-slides': described('University horizontal-curve slides'),
  'tangent-offset-note': described('Offset from tangent, approximate and exact'),
  'curve-elements': described('Curve elements for R = 280 m and 60 degrees (worked page)'),
  'civil-formulas': titled('Civil Engineering Formulas'),
  'engineering-aid-3': titled('Engineering Aid 3 (NAVEDTRA 14069)'),
  quartet: titled('The quartet of 1973 (a built-in data set of a statistics language)'),
  'nist-strd': titled('NIST Statistical Reference Datasets, linear regression'),
  'nist-handbook': titled('NIST/SEMATECH e-Handbook of Statistical Methods'),
  'regression-course': described('Regression course page on studentized deleted residuals'),
  'tight-wire-note': described('Tight-wire sag formula and example (note on a sag chart)'),
  'line-sag-example': described('Line sag example (parabola)'),
  // areas and volumes
  'surveying-and-levelling': titled(
    'Surveying and Levelling, textbook 1994, ISBN 978-0-07-460399-4 (open companion notebooks)',
  ),
  'quadrilateral-figure': described('Shoelace formula for a small quadrilateral'),
  'six-course-example': described('Area computation example, double meridian distances'),
  'closed-traverse-exercise': described('Closed polygon traverse exercise'),
  'dmd-review-problem': described('Review problem: area by double meridian distances'),
  'offset-slides': described('Offset-area examples, regular and irregular spacing (slides)'),
  'parallel-set-question': described('Parallel-set area of a convex polygon (question and answer)'),
  'transport-wikibook': titled('Fundamentals of Transportation (open wikibook)'),
  'earthwork-slides': described('Student earthwork slides'),
  'estimating-textbook': titled('Estimating in Building Construction'),
  'navy-earthwork': titled('Equipment Operator manuals NAVEDTRA 14080 and 14081'),
  'railroad-handbook': described("Railroad engineers' field handbook, 1857"),
  'borrow-pit-handout': described('Civil engineering handout on borrow-pit volumes'),
  'plane-survey-protocols': titled('Plane Survey protocols (University of Melbourne)'),
  'estimating-test-item': described('Construction estimating test item'),
  'trench-question': described('Worked question on a trench'),
  'estimating-slides': described('Construction estimating lecture slides (earthwork)'),
  'estimating-notes': described('Construction estimating lecture notes'),
  'cost-course-notes': described('Construction cost estimating course notes'),
  'equipment-solutions': page(
    'Solution manual of a construction equipment textbook, chapter 5',
    'https://www.coursepaper.com/solution-manual/978-0815360827-chapter-5/',
  ),
  'void-ratio-question': page(
    'Question page: a fill of 150 000 m3 at a void ratio of 0.8',
    'https://byjus.com/question-answer/a-fill-having-a-volume-of-150000-cum-is-to-be-constructed-at-a-void',
  ),
  'ton-in-the-ground': page(
    'Determine the cubic yard in the ground',
    'http://www.expertsmind.com/questions/determine-the-cubic-yard-in-the-ground-30170401.aspx',
  ),
  'borrow-water-question': page(
    'Question page: filling a depression from borrow',
    'https://w6.fakespot.com/pregunas/14654561',
  ),
  'load-factor-table': page(
    'Table of swell and load factor, reprinted in fragments',
    'https://www.petrovandepas.nl/KRUcrusher/2021/29236-bulking-of-wet-sand-volume.html',
  ),
  'geotechnical-notebooks': titled(
    'Principles of Geotechnical Engineering, 7th edition (open companion notebooks)',
  ),
  'foundation-notebooks': titled('Principles of Foundation Engineering (open companion notebooks)'),
  // materials
  'brick-association': titled(
    'Seven easy steps to a mortarless walkway, driveway and patio (Brick Industry Association)',
  ),
  'patio-article': described('Home-improvement article on a brick paver patio'),
  'patio-needs-article': described('Home-improvement article on what a brick patio needs'),
  'road-gravel-page': described("Aggregate haulier's page: road gravel"),
  'paver-walk-thread': described('Trade forum: base of a paver walk'),
  'aggregate-faq': described("Aggregate supplier's questions and answers: ordering rule"),
  'bulking-page': page('Bulking of sand', 'https://www.theconstructioncivil.org/bulking-of-sand/'),
  'paver-installation': page(
    'Concrete paver installation (trade association)',
    'https://www.icpi.org/paving-systems/concrete-pavers/installation',
  ),
  'asphalt-institute': titled('Asphalt Institute, technical page on density'),
  'board-exam-density': described('Board-exam review page: relative density'),
  'freezing-example': page(
    'Calculation of frost depth (pavement reference site)',
    'http://www.pavementinteractive.org/frost-action/calculation-of-frost-depth',
  ),
  'borrow-water-example': page(
    'Quantity of water added for required compaction of subgrade and embankment',
    'http://www.highwayguide.co.in/what-is-90th-percentile-cbr-as-per-irc-37-2012/',
  ),
  'frost-evaluation': titled('UFC 3-260-03 Airfield Pavement Evaluation'),
  'board-exam-review': described('Board-exam review page: relative compaction'),
  'soil-laboratory-article': described('Soil-laboratory article: sand cone'),
  'compaction-problems': page(
    'Soil compaction problem set',
    'https://www.scribd.com/document/682150280/SOIL-COMPACTION-PROBLEM-SET',
  ),
  'compactor-question': described('Worked question: soil compactor selection'),
  'civil-formula-handbook': described('Civil engineering formula handbook'),
  // structure
  'highway-solution-8-in': described(
    'Worked solution, highway-engineering problem (4, 8 and 8 in)',
  ),
  'highway-solution-modulus': described(
    'Worked solution, highway-engineering problem (modulus unknown)',
  ),
  'highway-solution-interstate': described(
    'Worked solution, highway-engineering problem (interstate)',
  ),
  'highway-solution-two-layers': described(
    'Worked solution, highway-engineering problem (two layers)',
  ),
  'reliability-table': described('Pavement design thickness by the method of 1993'),
  'mine-permit-file': described('State mine-permit engineering file: structural number'),
  'design-sheet': described('Pavement design: worked design sheet'),
  'transport-course': titled('NPTEL Transportation Engineering, module 4, lecture 28'),
  'divided-highway-question': described('Exam question: cumulative standard axles'),
  'load-distribution-example': described('Load distribution factor: worked example'),
  'construction-growth-problem': described('Standard axle load, growth during construction'),
  // access, edges, rules
  'pavers-on-slopes': titled('Masonry Magazine, April 2007, pavers on slopes'),
} as const satisfies Record<string, Publication>;

/** The id of a publication that only a check cites. */
export type PublicationId = keyof typeof PUBLICATIONS;
