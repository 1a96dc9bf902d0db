import { describe, expect, test } from 'vitest';
import { lighterDrawing } from '../../.config/site/lighter-drawing.mjs';

describe('the path of a drawing', () => {
  test('is written in steps, which are exact in tenths', () => {
    const svg = '<path class="hatch" d="M106 362.9 112 362.9M114.2 370.9 120 370.8"/>';
    expect(lighterDrawing(svg)).toBe('<path class="hatch" d="m106 362.9 6 0m2.2 8 5.8 -0.1"/>');
  });

  test('closed lines end where they began', () => {
    const svg = '<path d="M10 20 15 20 15 24zM13 25zM14 30 16 31"/>';
    expect(lighterDrawing(svg)).toBe('<path d="m10 20 5 0 0 4zm3 5zm1 5 2 1"/>');
  });

  test.for(['M353.1 401.1Z', 'M1 2L3 4', 'M1.25 2 3 4'])('%s stays as it is', (path) => {
    const svg = `<path d="${path}"/>`;
    expect(lighterDrawing(svg)).toBe(svg);
  });
});
