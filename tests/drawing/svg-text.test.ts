import { describe, expect, test } from 'vitest';
import { roundFactor } from '../../src/drawing/frame/scale.js';
import { coordinateText } from '../../src/drawing/svg/coordinate-text.js';
import { element, textElement } from '../../src/drawing/svg/element.js';
import { escapeText, shownName } from '../../src/drawing/svg/escape-text.js';
import { expectFault } from '../faults.js';
import { readXml } from './read-svg.js';

describe('a coordinate', () => {
  test.each([
    [1.005, '1'],
    [12.3456, '12.35'],
    [-0.001, '0'],
    [100, '100'],
    [-7.5, '-7.5'],
    [1e6, '1000000'],
  ])('%d is written %s', (value, text) => {
    expect(coordinateText(value)).toBe(text);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%d is refused',
    (value) => {
      expectFault(() => coordinateText(value), 'NOT_FINITE');
      expectFault(() => element('line', { x1: value }), 'NOT_FINITE');
    },
  );
});

describe('text in SVG', () => {
  test('is read back as it was', () => {
    const text = `<b>&"'</b> ]]> --> é 車`;
    const root = readXml(textElement('text', { id: text }, text));
    expect(root.text).toBe(text);
    expect(root.attributes['id']).toBe(text);
  });

  test('shows what XML cannot hold', () => {
    expect(escapeText('a\u0000b\ud800c\uffff\u0085')).toBe('a\ufffdb\ufffdc\ufffd\ufffd');
    expect(escapeText('🧱')).toBe('🧱');
  });

  test('a name cannot turn what stands beside it', () => {
    expect(shownName('a\u202eb\u2069c')).toBe('abc');
    expect(shownName('שביל')).toBe('\u2068שביל\u2069');
    expect(shownName('Allée')).toBe('Allée');
  });
});

test('a factor of heights is round', () => {
  expect([0.03, 1, 1.2, 2.4, 11, 740].map((of) => roundFactor(of, 'up'))).toEqual([
    0.03, 1, 1.5, 2.5, 15, 800,
  ]);
  expect([0.034, 1, 1.2, 2.4, 9.9, 740].map((of) => roundFactor(of, 'down'))).toEqual([
    0.03, 1, 1, 2, 8, 600,
  ]);
});
