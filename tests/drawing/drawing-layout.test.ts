import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRAWING_TEXTS, type DrawingLabel } from 'settline/drawing';
import { planJob } from 'settline/job';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { CHECK_DRAWINGS } from './checked.js';
import { allDrawingsOf, drawingsOf, PLANS, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, readXml } from './read-svg.js';

describe('texts lie apart and inside the picture', () => {
  test.each(PLANS.map((plan) => ({ name: plan.name, plan })))('$name', ({ plan }) => {
    const drawings = STYLES.flatMap((style) => allDrawingsOf(plan, style));
    expect(drawings.length).toBeGreaterThan(24);
    for (const svg of drawings) expect(layoutFaults(svg)).toEqual([]);
  });

  test('on made-up sites', () => {
    fc.assert(
      fc.property(site, fc.constantFrom(...STYLES), (of, style) => {
        const plan = planJob(jobOf(of, style.system));
        for (const svg of allDrawingsOf(plan, style)) expect(layoutFaults(svg)).toEqual([]);
      }),
      runs(200),
    );
  });

  test('a text on another and a mark outside are found', () => {
    const text = (x: number, words: string) =>
      `<text x="${x}" y="20" font-size="10">${words}</text>`;
    const page = `<svg viewBox="0 0 100 40">${text(5, 'base')}${text(15, 'stone')}<line x1="0" y1="1" x2="101" y2="1"/></svg>`;
    expect(layoutFaults(page)).toEqual(['a mark at 101, 1 is outside', '"base" lies on "stone"']);
  });
});

describe('every drawing', () => {
  const drawings = PLANS.flatMap((plan) => STYLES.flatMap((style) => drawingsOf(plan, style)));

  test('says what it is to who cannot see it', () => {
    for (const svg of drawings) {
      const root = readXml(svg);
      const [title, desc] = [elementsOf(root, 'title')[0], elementsOf(root, 'desc')[0]];
      expect(root.attributes['role']).toBe('img');
      expect(root.attributes['aria-labelledby']).toBe(
        `${title?.attributes['id']} ${desc?.attributes['id']}`,
      );
      expect(title?.text).toMatch(/^(?:Section through|Profile along) /);
      expect(desc?.text).toMatch(/finished grade .*subgrade /);
    }
  });

  test('stands alone: no script, no address, fonts of the reader', () => {
    for (const svg of drawings) {
      expect(svg).not.toMatch(/<script|<foreignObject|href|@import|@font-face|url\((?!#)/i);
      expect(readXml(svg).attributes['font-family']).toBe('sans-serif');
    }
  });

  test('has its hatches as strokes: patterns make large files of what is printed', () => {
    for (const svg of drawings) {
      expect(svg).not.toMatch(/<pattern|url\(/);
      expect(svg).toMatch(/class="(?:hatch|dot)"/);
    }
  });

  test('has a rule for each mark, and no rule without a mark in any drawing', () => {
    const styled = new Set<string>();
    const marked = new Set<string>();
    for (const svg of [...PLANS, ...PLANS].flatMap((plan, k) =>
      allDrawingsOf(plan, { system: 'us', theme: k < PLANS.length ? 'print' : 'screen' }),
    )) {
      const own = new Set(
        [...svg.matchAll(/\.settline-\w+ \.([\w-]+)\{/g)].map(([, name = '']) => name),
      );
      for (const [, names = ''] of svg.matchAll(/ class="([^"]+)"/g)) {
        for (const name of names.split(' ')) {
          marked.add(name);
          if (own.has(name)) styled.add(name);
          else if (styled.has(name)) expect.unreachable(`${name} is marked without its rule`);
        }
      }
    }
    expect(styled.size).toBeGreaterThan(25);
    expect([...styled].filter((name) => !marked.has(name))).toEqual([]);
  });

  test('has ids of its own, so that several stand in one page', () => {
    const ids = drawings.map((svg) => elementsOf(readXml(svg), 'title')[0]?.attributes['id']);
    expect(new Set(ids).size).toBe(drawings.length);
  });

  test('carries every label that it uses', () => {
    const label: DrawingLabel = (key, values) =>
      DRAWING_TEXTS[key].replace(/\{(\w+)\}/g, (_, name: string) => values[name] ?? '');
    for (const plan of PLANS) {
      for (const style of STYLES) {
        expect(allDrawingsOf(plan, { ...style, label })).toEqual(allDrawingsOf(plan, style));
      }
    }
    for (const style of STYLES) {
      for (const draw of CHECK_DRAWINGS) expect(draw({ ...style, label })).toBe(draw(style));
    }
  });

  test('is the same each time', () => {
    const again = PLANS.flatMap((plan) => STYLES.flatMap((style) => drawingsOf(plan, style)));
    expect(again).toEqual(drawings);
  });
});
