import { convert, formatLength, length, roundTo, slope } from 'settline/units';
import { expectDerived, expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

published(
  { source: 'grades-article', section: 'worked conversion', kind: 'printed' },
  '1.43 ft is 1 ft 5 1/8 in to the nearest eighth',
  () => {
    // 5.16 in, 1.28 eighths
    const difference = length('101.43 ft').minus(length('100 ft'));
    expectExact(difference.to('in').toString(), '17.16');
    expectExact(formatLength(difference, { as: 'ft-in', nearest: '1/8 in' }), `1' 5 1/8"`);
  },
);

published(
  { source: 'masonry-handbook', section: 'p. 285', kind: 'printed' },
  '12 ft at a quarter inch per foot falls 3 in',
  () => {
    expectExact(length('12 ft').times(slope('1/4 in per ft')).to('in').toString(), '3');
  },
);

published(
  { source: 'training-slides-gradients', section: 'slides 7 and 11', kind: 'printed' },
  '1:60 and 8 m at 1:40',
  () => {
    // 16.6 mm/m is cut off, not rounded
    const sixty = slope('1:60').toNumber('mm/m');
    expectMisprint(sixty, '16.6', '16.7');
    expectDerived(sixty, '16.6667');
    expectExact(length('8 m').times(slope('1:40')).to('m').toString(), '0.2');
  },
);

published(
  {
    source: 'survey-foot-notice',
    section: '1200/3937 m',
    kind: 'printed',
  },
  'the survey foot',
  () => {
    // the notice gives 1200/3937 m, NIST Handbook 44 (Appendix C) 2 parts in a million
    expectExact(convert(3937, 'ft-us', 'm').toString(), '1200');
    expectExact(convert(1_000_000, 'ft', 'ft-us').toString(), '999998');
  },
);

published(
  { source: 'nist-sp811', section: 'Appendix B.8, read in a transcription', kind: 'printed' },
  'printed factors of NIST SP 811, Appendix B.8',
  () => {
    // the figures in bold there are exact
    expectPrinted(convert(1, 'psi', 'Pa').toNumber() / 1000, '6.894757');
    expectPrinted(convert(1, 'lb/ft3', 'kg/m3').toNumber() / 10, '1.601846');
    expectPrinted(convert(1, 'ton-us/yd3', 'kg/m3').toNumber() / 1000, '1.186553');
    expectPrinted(convert(1, 'lb/yd3', 'kg/m3').toNumber() * 10, '5.932764');
    expectExact(convert(1, 'lbf', 'N').toString(), '4.4482216152605');
    expectExact(convert(1, 'gal-us', 'l').toString(), '3.785411784');
  },
);

published(
  { source: 'rounding-procedure', section: 'scope and B', kind: 'printed' },
  'an exact 5 goes up by the state, to the even digit by the standard it replaces',
  () => {
    const rounded = (metres: string, step: string, rounding: 'half-up' | 'half-even') =>
      roundTo(length(metres, 'm'), length(step, 'm'), rounding).to('m').toString();
    expectExact(rounded('1.861', '0.01', 'half-up'), '1.86');
    // 4.25 meets a limit of 4 and fails one of 4.0
    expectExact(rounded('4.25', '1', 'half-up'), '4');
    expectDerived(Number(rounded('4.25', '0.1', 'half-up')), '4.3');
    expectDerived(Number(rounded('4.25', '0.1', 'half-even')), '4.2');
  },
);

published(
  { source: 'astm-e29', section: '6.4.3 and 6.4.4', kind: 'derived' },
  'ties go to the even digit',
  () => {
    const even = (text: string) => roundTo(length(text, 'm'), length('1 m'), 'half-even');
    expectExact(
      ['0.5', '1.5', '2.5', '3.5'].map((text) => even(text).to('m').toString()),
      ['0', '2', '2', '4'],
    );
  },
);
