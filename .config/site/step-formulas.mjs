// The formulas that parts of the sources give in their steps of working, with what their symbols mean.
import ts from 'typescript';

/** The functions of src/working.ts that make a step of a formula. */
const STEP_MAKERS = new Set(['formulaStep', 'derivedStep']);

const isText = (node) => node !== undefined && ts.isStringLiteralLike(node);

/** Symbols and names of every `given('T', 'thickness', ...)` below a node. */
function symbolsIn(node) {
  const found = [];
  const visit = (child) => {
    if (ts.isCallExpression(child) && child.expression.getText() === 'given') {
      const [symbol, name] = child.arguments;
      if (isText(symbol) && isText(name)) found.push([symbol.text, name.text]);
    }
    ts.forEachChild(child, visit);
  };
  visit(node);
  return found;
}

/** Title, formula and symbols of each formula step below nodes, in order, each formula once. */
export function stepFormulas(nodes) {
  const found = new Map();
  const visit = (node) => {
    if (ts.isCallExpression(node) && STEP_MAKERS.has(node.expression.getText())) {
      const [step] = node.arguments;
      const fields = ts.isObjectLiteralExpression(step) ? step.properties : [];
      const field = (name) => fields.find((one) => one.name?.getText() === name)?.initializer;
      const [title, formula] = [field('title'), field('formula')];
      if (isText(formula) && !found.has(formula.text)) {
        const symbols = new Map(symbolsIn(node));
        found.set(formula.text, { title: isText(title) ? title.text : '', symbols });
      }
    }
    ts.forEachChild(node, visit);
  };
  nodes.forEach(visit);
  return [...found].map(([formula, { title, symbols }]) => ({ formula, title, symbols }));
}

/** A page shows so many; what a whole job uses stands on the pages of what it calls. */
const MOST = 20;

/** The same as Markdown. */
export const formulasText = (nodes) =>
  stepFormulas(nodes)
    .slice(0, MOST)
    .map(({ formula, title, symbols }) => {
      const words = [...symbols].map(([symbol, name]) => `\`${symbol}\` ${name}`).join('; ');
      const head = title === '' ? '' : `${title}:\n\n`;
      const where = words === '' ? '' : `\n\nwhere ${words}.`;
      return `${head}\`\`\`formula\n${formula}\n\`\`\`${where}`;
    })
    .join('\n\n');
