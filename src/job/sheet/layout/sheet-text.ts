import { columnsText } from './columns.js';
import { entryText, headingText, tableText, titleText, wrap } from './layout.js';
import type { SheetLine } from './sheet-lines.js';

/** A sheet as plain text, lines ended by `\n`. Internal. */
export const sheetText = (lines: readonly SheetLine[], width: number): string =>
  `${lines.flatMap((line) => linesOf(line, width)).join('\n')}\n`;

function linesOf(line: SheetLine, width: number): string[] {
  switch (line.kind) {
    case 'title':
      return titleText(line.text, width);
    case 'heading':
      return headingText(line.text, width);
    case 'subheading':
      return ['', ...wrap(line.text, width, '', line.indent)];
    case 'paragraph':
      return wrap(line.text, width, line.first, line.indent);
    case 'entry':
      return entryText(line.label, line.value, width);
    case 'table':
      return tableText(line.head === null ? line.rows : [line.head, ...line.rows], width);
    case 'columns':
      return columnsText(line.first, line.others, width);
    case 'space':
      return [''];
    case 'signature':
      return signatureText(line.label, width);
  }
}

function signatureText(label: string, width: number): string[] {
  const date = ' date __________';
  const start = `${label.padEnd(14)} `;
  return ['', `${start}${'_'.repeat(width - start.length - date.length)}${date}`];
}
