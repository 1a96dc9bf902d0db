import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitText, textWidth, wrapText } from '../../src/drawing/svg/text-width.js';
import { runs } from '../runs.js';
import { measuredWidth } from './type-widths.js';

const ascii = fc.string({
  unit: fc.integer({ min: 32, max: 126 }).map((k) => String.fromCharCode(k)),
});

describe('the width of a text', () => {
  test('is never less than on a wide face, and not much more for words and figures', () => {
    fc.assert(
      fc.property(ascii, (text) => {
        expect(textWidth(text, 14)).toBeGreaterThanOrEqual(measuredWidth(text, 14));
      }),
      runs(300),
    );
    for (const text of ['27 1/4', 'finished grade', 'Depths run from string KERB down', '213.06']) {
      expect(textWidth(text, 10) / measuredWidth(text, 10)).toBeLessThan(1.12);
      expect(textWidth(text, 10, true)).toBeGreaterThanOrEqual(measuredWidth(text, 10, true));
    }
  });
});

describe('a text cut to its room', () => {
  test('fits, starts like the whole, and ends in an ellipsis', () => {
    fc.assert(
      fc.property(ascii, fc.double({ min: 20, max: 300, noNaN: true }), (text, room) => {
        const cut = fitText(text, 13, room);
        expect(textWidth(cut, 13)).toBeLessThanOrEqual(room);
        if (cut === text) return;
        expect(cut.endsWith('…')).toBe(true);
        expect(text.startsWith(cut.slice(0, -1))).toBe(true);
      }),
      runs(300),
    );
  });

  test('keeps what is set apart closed', () => {
    expect(fitText('\u2068חצר ארזים גדולה\u2069', 10, 60)).toMatch(/^\u2068.*…\u2069$/);
  });

  test('never halves a character', () => {
    expect(fitText('🧱🧱🧱🧱', 10, 45)).toBe('🧱🧱…');
  });
});

describe('a text in lines', () => {
  test('keeps all its words, each line in its room', () => {
    const text = 'Depths run down from string KERB. The stake is drawn beside the dig.';
    const lines = wrapText(text, 13, 150);
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(150);
  });

  test('does not part a measure', () => {
    for (const measure of ['27 1/4 in', `24' 3 5/8"`, `7' 0"`, '692 mm', '100.25 ft']) {
      for (let room = 90; room < 200; room += 3) {
        const lines = wrapText(`subgrade ${measure} below it`, 13, room);
        expect(lines.some((line) => line.includes(measure))).toBe(true);
      }
    }
  });

  test('cuts the last line where there are too many', () => {
    const lines = wrapText('one two three four five six seven', 13, 60, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
  });
});
