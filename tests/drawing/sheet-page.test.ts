import { describe, expect, test } from 'vitest';
import { renderJobSheetHTML } from 'settline/drawing';
import { planJob, renderJobSheet } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';
import { testRefusals } from '../refusals.js';
import { expectFault } from '../faults.js';
import { PLANS } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';

const sites = PLANS.flatMap((plan) =>
  (['us', 'metric'] as const).map((system) => ({ name: plan.name, system, plan })),
);

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
};
const decoded = (html: string) => html.replace(/&[^;]+;/g, (name) => ENTITIES[name] ?? name);
const withoutDrawings = (html: string) => html.replace(/<figure[\s\S]*?<\/figure>/g, '');
const bodyOf = (html: string) => html.slice(html.indexOf('<main>'), html.indexOf('</main>'));

const first = () => PLANS[0] ?? expect.unreachable('no plan');

/** Words in any order: what is one table on a page may be two in a narrow text. */
const sorted = (text: string): string[] =>
  text
    .split(/\s+/)
    .filter((word) => word !== '')
    .sort();
const wordsOfPage = (html: string) =>
  sorted(decoded(withoutDrawings(bodyOf(html)).replace(/<[^>]+>/g, ' ')));
const wordsOfSheet = (text: string) =>
  sorted(
    text
      .replace(/^[-=]+$/gm, '')
      .replace(/^ *\[ \]/gm, '')
      .replace(/^ *____/gm, ''),
  );

describe.each(sites)('$name, $system', ({ plan, system }) => {
  const html = renderJobSheetHTML(plan, { system });

  test('has the words of the sheet, all of them and no others', () => {
    expect(wordsOfPage(html)).toEqual(wordsOfSheet(renderJobSheet(plan, { system, width: 120 })));
  });

  test('has each drawing for a phone and for paper, texts apart', () => {
    const drawings = html.match(/<svg[\s\S]*?<\/svg>/g) ?? [];
    expect(drawings.length).toBeGreaterThanOrEqual(
      2 * (1 + plan.pavements.length + plan.stringLines.length),
    );
    for (const svg of drawings) expect(layoutFaults(`${svg}\n`)).toEqual([]);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(html.match(/<figure class="wide \w+">/g)?.length).toBeLessThanOrEqual(
      drawings.length / 2,
    );
  });

  test('stands alone: no script, nothing loaded', () => {
    expect(html).not.toMatch(
      /<script|<link|<img|<iframe|\son\w+=|href|src=|@import|@font-face|url\((?!#)/i,
    );
    expect(html).toContain("default-src 'none'");
    expect(html.match(/<style>/g)).toHaveLength(1);
  });
});

describe('the order of work on a page', () => {
  test.each(sites)('$name, $system: stands before its first step, for screens alone', (one) => {
    const html = renderJobSheetHTML(one.plan, { system: one.system });
    const [, steps = ''] = html.split('<section class="steps-part">');
    const [before = ''] = steps.split('<h3>');
    expect(before.match(/>Order of work<\/title>/g)).toHaveLength(2);
    expect(before).toContain('<figure class="wide screen">');
    expect(html.split('>Order of work</title>')).toHaveLength(3);
  });

  test('is not printed', () => {
    const [, style = ''] = renderJobSheetHTML(first(), { system: 'us' }).split('@media print');
    expect(style).toMatch(/\.screen\{display:none\}/);
  });
});

describe('a table of many columns', () => {
  test('has the head of its column at each cell, for a phone', () => {
    const html = sites.map(({ plan, system }) => renderJobSheetHTML(plan, { system })).join('');
    const tables = html.match(/<table class="most">.*?<\/table>/g) ?? [];
    expect(tables.length).toBeGreaterThan(4);
    for (const table of tables) {
      const heads = [...table.matchAll(/<th>(.*?)<\/th>/g)].map(([, head]) => head);
      const named = [...table.matchAll(/<td data-head="(.*?)">/g)].map(([, head]) => head);
      expect(heads.length).toBeGreaterThan(6);
      expect(named.length).toBe(table.match(/<td/g)?.length);
      named.forEach((head, k) => {
        expect(head).toBe(heads[k % heads.length]);
      });
    }
  });
});

describe('a page', () => {
  const [plan] = PLANS;
  if (plan === undefined) throw new Error('no plan');

  test('is for the paper of its system, or the one that is named', () => {
    expect(renderJobSheetHTML(plan, { system: 'us' })).toContain('@page{size:letter');
    expect(renderJobSheetHTML(plan, { system: 'metric' })).toContain('@page{size:A4');
    expect(renderJobSheetHTML(plan, { system: 'us', paper: 'a4' })).toContain('@page{size:A4');
  });

  test('keeps figures in one piece and has boxes to tick', () => {
    const html = renderJobSheetHTML(plan, { system: 'us' });
    expect(html).toMatch(/\.entry b\{[^}]*white-space:nowrap/);
    expect(html).toMatch(/td\{[^}]*white-space:nowrap/);
    expect(html.match(/<span class="box">/g)?.length).toBeGreaterThan(20);
  });

  test('has its tables with heads: the depths below each string', () => {
    const html = renderJobSheetHTML(plan, { system: 'us' });
    const head =
      '<thead><tr><th>layer</th><th>top</th><th>bottom</th><th>thickness</th></tr></thead>';
    expect(html.split(head)).toHaveLength(plan.stringLines.length + 1);
  });

  test('takes hostile names as text', () => {
    const job = cedarCourtJob();
    const name = '</style><script>alert(1)</script>"\'& \u202eחצר 12';
    const html = renderJobSheetHTML(
      planJob({ ...job, name, pavements: job.pavements.map((one) => ({ ...one, name })) }),
      { system: 'us' },
    );
    expect(html).not.toMatch(/<script|[\u202a-\u202e]/);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(html).toContain('<bdi>חצר</bdi> 12');
  });

  test('is the same each time', () => {
    expect(renderJobSheetHTML(plan, { system: 'us' })).toBe(
      renderJobSheetHTML(plan, { system: 'us' }),
    );
  });

  testRefusals(
    (options: Parameters<typeof renderJobSheetHTML>[1]) => renderJobSheetHTML(plan, options),
    { system: 'us' },
    [
      ['system', 'imperial', 'UNKNOWN_CHOICE'],
      ['paper', 'a5', 'UNKNOWN_CHOICE'],
      ['width', 48, 'UNKNOWN_FIELD'],
    ],
  );

  test('colours only lines that the job has', () => {
    const lineColours = [{ line: 'gas', colour: 'yellow' }] as const;
    expectFault(() => renderJobSheetHTML(plan, { system: 'us', lineColours }), 'UNKNOWN_ID');
  });

  test('is of a plan', () => {
    expectFault(() => renderJobSheetHTML({ ...plan }, { system: 'us' }), 'PLAN_INVALID');
  });
});
