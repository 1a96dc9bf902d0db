// Writes src/job/saved/plan-shape.ts: what every field of a plan holds, from the declarations of the
// plan and of the job in it, for the reader of saved plans. Run it after such a declaration was
// changed: npm run plan-shape
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const target = join(root, 'src', 'job', 'saved', 'plan-shape.ts');

/** Collects the objects of a plan, each form once, as text that the reader takes apart. */
class Shapes {
  objects = [];
  places = new Map();
  open = [];

  constructor(checker) {
    this.checker = checker;
  }

  /** The number of an object of these fields. */
  place(text) {
    if (!this.places.has(text)) {
      this.places.set(text, this.objects.length);
      this.objects.push(text);
    }
    return this.places.get(text);
  }

  /** The code of a type; in a job only the form that a plan writes counts. */
  code(type, inJob) {
    const parts = type.isUnion() ? type.types : [type];
    const rest = parts.filter((part) => !has(part, ts.TypeFlags.Null | ts.TypeFlags.Undefined));
    const isNullable = parts.some((part) => has(part, ts.TypeFlags.Null));
    return `${isNullable ? '?' : ''}${this.whole(rest, inJob)}`;
  }

  whole(parts, inJob) {
    const dimensions = [...new Set(parts.map((part) => this.dimension(part)).filter(Boolean))];
    const isListToo = parts.some((part) => this.checker.isArrayType(part));
    if (dimensions.includes('value') && isListToo) return 'values';
    if (dimensions.length > 1) return 'value';
    if (dimensions.length === 1) return dimensions[0];
    if (inJob && parts.some((part) => part.symbol?.name === 'Decimal')) return 'digits';
    if (inJob && parts.every(isAmount) && parts.length > 1) return 'digits';
    const objects = parts.filter((part) =>
      has(part, ts.TypeFlags.Object | ts.TypeFlags.Intersection),
    );
    if (objects.length === 0) return this.plain(parts);
    if (objects.length < parts.length && !inJob) this.refuse('words beside objects', parts);
    const lists = objects.filter((part) => this.checker.isArrayType(part));
    const fields = objects.filter(
      (part) => !this.checker.isArrayType(part) && !this.checker.isTupleType(part),
    );
    if (lists.length > 0) return this.list(lists, inJob);
    return fields.map((part) => this.object(part, inJob)).join('|');
  }

  list(lists, inJob) {
    const [type] = lists.flatMap((list) => this.checker.getTypeArguments(list));
    return `[]${this.code(type, inJob)}`;
  }

  object(type, inJob) {
    const index = this.checker.getIndexInfosOfType(type)[0];
    if (index !== undefined) return `{}${this.code(index.type, inJob)}`;
    if (this.open.includes(type)) this.refuse('an object within itself', [type]);
    this.open.push(type);
    const fields = type
      .getProperties()
      .filter((property) => !this.isMethod(property))
      .map((property) => this.field(property, inJob));
    this.open.pop();
    return `#${this.place(fields.join(';'))}`;
  }

  isMethod(property) {
    return this.checker.getTypeOfSymbol(property).getCallSignatures().length > 0;
  }

  field(property, inJob) {
    const { name } = property;
    const type = this.checker.getTypeOfSymbol(property);
    // the working is left out of the JSON
    const isOptional = has(property, ts.SymbolFlags.Optional) || name === 'working';
    if (name === 'outline' && inJob) return `${name}${isOptional ? '?' : ''} outline`;
    return `${name}${isOptional ? '?' : ''} ${this.code(type, inJob || name === 'job')}`;
  }

  plain(parts) {
    if (parts.every((part) => has(part, ts.TypeFlags.BooleanLike))) return 'flag';
    if (parts.every((part) => has(part, ts.TypeFlags.StringLiteral))) return this.choice(parts);
    if (parts.length > 1 && parts.every(isAmount)) return 'step';
    const [only, ...more] = parts;
    if (only === undefined || more.length > 0) this.refuse('several plain types', parts);
    if (has(only, ts.TypeFlags.NumberLiteral)) return String(only.value);
    if (has(only, ts.TypeFlags.Number)) return 'number';
    if (has(only, ts.TypeFlags.String)) return 'text';
    return this.refuse('a type that no saved plan can hold', parts);
  }

  /** Words of a choice; those of the catalogue of sources are looked up there. */
  choice(parts) {
    const words = parts.map(({ value }) => value);
    return words.includes('nist-hb44') ? 'source' : `=${words.join('|')}`;
  }

  /** The dimension of a quantity. */
  dimension(part) {
    const name = part.symbol?.name;
    if (name === 'AnyQuantity' || part.aliasSymbol?.name === 'AnyQuantity') return 'value';
    if (name !== 'Quantity') return undefined;
    return this.checker.getTypeOfSymbol(part.getProperty('dimension')).value ?? 'value';
  }

  refuse(why, parts) {
    const types = parts.map((part) => this.checker.typeToString(part)).join(' | ');
    throw new Error(`${why}: ${types}`);
  }
}

const has = ({ flags }, wanted) => (flags & wanted) !== 0;
const isAmount = (part) => has(part, ts.TypeFlags.Number | ts.TypeFlags.String);

/** The objects of a plan; the last is the plan itself. */
export function planShape() {
  const path = join(root, 'src', 'job', 'plan', 'plan.ts');
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(join(root, 'tsconfig.json'), (name) => readFileSync(name, 'utf8')).config,
    ts.sys,
    root,
  );
  const program = ts.createProgram([path], options);
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(program.getSourceFile(path));
  const plan = checker.getExportsOfModule(module).find(({ name }) => name === 'JobPlan');
  const shapes = new Shapes(checker);
  shapes.code(checker.getDeclaredTypeOfSymbol(plan), false);
  return shapes.objects;
}

/** The source file that holds them. */
export function planShapeFile() {
  return `// Written by .config/write-plan-shape.mjs from the declarations of a plan. Do not edit.

/** Every object of a plan, its fields as name and code; the last is the plan itself. Internal. */
export const PLAN_SHAPE: readonly string[] = ${JSON.stringify(planShape(), null, 2)};
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(target, planShapeFile());
