import { describe, expect, test } from 'vitest';
import {
  drawProfile,
  drawSection,
  DRAWING_TEXTS,
  type DrawingLabel,
  type DrawProfileOptions,
  type DrawSectionOptions,
} from 'settline/drawing';
import { planJob, type JobInput } from 'settline/job';
import { PALETTES } from '../../src/drawing/frame/themes.js';
import { cedarCourtJob } from '../cedar-court.js';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { allDrawingsOf, drawingsOf, PLANS, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, readXml, textsOf } from './read-svg.js';

const plan = planJob(cedarCourtJob());

describe('drawSection refuses', () => {
  testRefusals(
    (options: DrawSectionOptions) => drawSection(plan, options),
    { system: 'us', pavement: 'court' },
    [
      ['system', 'imperial', 'UNKNOWN_CHOICE'],
      ['system', undefined, 'REQUIRED'],
      ['pavement', 'yard', 'UNKNOWN_ID'],
      ['pavement', undefined, 'REQUIRED'],
      ['string', 'nobody', 'UNKNOWN_ID'],
      ['string', 'garden', 'UNKNOWN_ID'],
      ['width', 319, 'OUT_OF_RANGE'],
      ['width', 500, 'OUT_OF_RANGE'],
      ['width', 2401, 'OUT_OF_RANGE'],
      ['width', 720.5, 'NOT_WHOLE'],
      ['width', Number.NaN, 'NOT_FINITE'],
      ['narrow', 'yes', 'WRONG_TYPE'],
      ['theme', 'dark', 'UNKNOWN_CHOICE'],
      ['label', 'de', 'WRONG_TYPE'],
      ['colour', 'red', 'UNKNOWN_FIELD'],
    ],
  );

  test('what is no plan', () => {
    const copy = { ...plan };
    expectFault(() => drawSection(copy, { system: 'us', pavement: 'court' }), 'PLAN_INVALID');
  });
});

describe('drawProfile refuses', () => {
  testRefusals(
    (options: DrawProfileOptions) => drawProfile(plan, options),
    { system: 'metric', string: 'kerb' },
    [
      ['string', 'nobody', 'UNKNOWN_ID'],
      ['string', undefined, 'REQUIRED'],
      ['width', 599, 'OUT_OF_RANGE'],
      ['pavement', 'court', 'UNKNOWN_FIELD'],
    ],
  );

  test('what is no plan', () => {
    expectFault(() => drawProfile({ ...plan }, { system: 'us', string: 'kerb' }), 'PLAN_INVALID');
  });
});

describe('sizes', () => {
  test.each([
    [{}, 720],
    [{ narrow: true }, 360],
    [{ width: 600 }, 600],
    [{ width: 1500 }, 1500],
    [{ narrow: true, width: 320 }, 320],
  ] as const)('%j is %i pixels wide', (size, width) => {
    for (const one of PLANS) {
      for (const svg of drawingsOf(one, { system: 'us', ...size })) {
        expect(readXml(svg).attributes['width']).toBe(`${width}`);
        expect(layoutFaults(svg)).toEqual([]);
      }
    }
  });
});

/** A site whose names are not what anybody expects. */
function named(name: string): JobInput {
  const job = cedarCourtJob();
  const id = (own: string) => `${own}${name}`.slice(0, 60);
  return {
    ...job,
    name,
    pavements: job.pavements.map((one) => ({
      ...one,
      name,
      layers: one.layers.map((layer, k) => ({ ...layer, name: id(`${k}`) })),
    })),
    stakes: job.stakes.map((one) => ({ ...one, id: id(one.id) })),
    stringLines: job.stringLines.map((one) => ({
      ...one,
      id: id(one.id),
      stakes: one.stakes.map(id),
    })),
  };
}

describe('names stay text', () => {
  test.each([
    ['marks of XML', `<b>&"'</b>]]><script>alert(1)</script>`],
    ['from right to left', 'חצר ארזים \u202e1234'],
    ['60 characters in one word', 'w'.repeat(60)],
    ['60 characters in words', 'long name '.repeat(6).trim()],
    ['wide letters', '車道歩道舗装砂利'.repeat(7)],
    ['pictures', '🧱🏗️'.repeat(12)],
    ['half a character', 'a\ud800b\udc00'],
  ])('%s', (_what, name) => {
    const hostile = planJob(named(name));
    for (const style of STYLES) {
      for (const svg of allDrawingsOf(hostile, style)) {
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toMatch(/<b>|<script/);
        expect(svg).not.toMatch(/[\u202a-\u202e]/);
      }
    }
  });

  test('a short one is shown whole, a long one ends in an ellipsis', () => {
    const short = planJob(named('<b>'));
    const root = readXml(drawSection(short, { system: 'us', pavement: 'court' }));
    expect(elementsOf(root, 'title')[0]?.text).toBe('Section through <b>');
    const long = planJob(named('w'.repeat(60)));
    const cut = readXml(drawSection(long, { system: 'us', pavement: 'court' }));
    expect(elementsOf(cut, 'title')[0]?.text).toMatch(/^Section through w+…$/);
  });

  test('one that runs from right to left is set apart from the figures beside it', () => {
    const root = readXml(drawSection(planJob(named('חצר')), { system: 'us', pavement: 'court' }));
    expect(elementsOf(root, 'title')[0]?.text).toBe('Section through \u2068חצר\u2069');
  });
});

describe('labels', () => {
  test('come from the function that is given, with their values', () => {
    const seen = new Map<string, Readonly<Record<string, string>>>();
    const label: DrawingLabel = (key, values) => {
      seen.set(key, values);
      return `${key.toUpperCase()} ${Object.values(values).join(' ')}`.trim();
    };
    const root = readXml(drawSection(plan, { system: 'us', pavement: 'court', label }));
    expect(elementsOf(root, 'title')[0]?.text).toBe('SECTION-TITLE Parking court');
    expect(seen.get('dig')).toEqual({ depth: '19 5/8 in' });
    expect(textsOf(root, 'figure')[0]).toBe('DIG 19 5/8 in');
    expect(Object.keys(DRAWING_TEXTS)).toEqual(expect.arrayContaining([...seen.keys()]));
  });

  test('lie apart however long they are, and figures stay whole', () => {
    const label: DrawingLabel = (key, values) =>
      `${Object.values(values).join(' ')} Beschriftung ${key} ${'Wort '.repeat(40)}`;
    for (const style of STYLES) {
      for (const one of PLANS) {
        const drawings = drawingsOf(one, { ...style, label });
        const plain = drawingsOf(one, style);
        drawings.forEach((svg, k) => {
          expect(layoutFaults(svg)).toEqual([]);
          const figures = (of: string) =>
            ['depth', 'thickness', 'reach', 'row-ground', 'row-dig'].flatMap((name) =>
              textsOf(readXml(of), name).filter((text) => /^[-\d /]+( in| mm)?$/.test(text)),
            );
          expect(figures(svg)).toEqual(figures(plain[k] ?? '').filter((text) => text !== '-'));
        });
      }
    }
  });

  test('with control characters are readable XML', () => {
    const svg = drawSection(plan, {
      system: 'us',
      pavement: 'court',
      label: (key) => `\u0000${key}\n\u0007`,
    });
    expect(elementsOf(readXml(svg), 'title')[0]?.text).toBe('\ufffdsection-title\ufffd\ufffd');
  });

  test('that are no text are refused', () => {
    const label = (() => 7) as unknown as DrawingLabel;
    const fault = expectFault(
      () => drawSection(plan, { system: 'us', pavement: 'court', label }),
      'WRONG_TYPE',
    );
    expect(fault.path).toEqual(['label']);
    expect(fault.message).toMatch(/^gives 7 for "[a-z-]+"/);
  });
});

/** Contrast of two colours, 1 to 21: WCAG 2, "contrast ratio" and "relative luminance" (from memory). */
function contrast(a: string, b: string): number {
  const light = (colour: string): number => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5].map((k) => {
      const part = Number.parseInt(colour.slice(k, k + 2), 16) / 255;
      return part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [high = 0, low = 0] = [light(a), light(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

describe('colours', () => {
  test('black on white has a contrast of 21', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  });

  test.each(Object.entries(PALETTES))('%s: what is read stands out', (_name, palette) => {
    for (const colour of [palette.ink, palette.faint, palette.mark]) {
      expect(contrast(colour, palette.paper)).toBeGreaterThanOrEqual(4.5);
    }
    const grounds = [palette.paver, palette.sand, palette.stone, palette.old, palette.soil];
    for (const ground of [...grounds, palette.cut, palette.fill]) {
      expect(contrast(palette.ink, ground)).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('print is black, white and grey', () => {
    const style = elementsOf(
      readXml(drawSection(plan, { system: 'us', pavement: 'court' })),
      'style',
    )[0]?.text;
    const colours = style?.match(/#[0-9a-f]{6}/g) ?? [];
    expect(colours.length).toBeGreaterThan(5);
    for (const colour of colours) expect(new Set(colour.match(/[0-9a-f]{2}/g)).size).toBe(1);
    expect(style).not.toContain('var(');
  });

  test('a screen takes light or dark by its setting', () => {
    const options = { system: 'us', pavement: 'court', theme: 'screen' } as const;
    const style = elementsOf(readXml(drawSection(plan, options)), 'style')[0]?.text ?? '';
    expect(style).toContain('@media(prefers-color-scheme:dark)');
    const used = [...style.matchAll(/var\((--[\w-]+)\)/g)].map(([, name]) => name);
    expect(used.length).toBeGreaterThan(10);
    for (const name of used) expect(style).toContain(`${name}:#`);
  });
});
