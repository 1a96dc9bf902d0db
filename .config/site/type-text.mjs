// Types as text, as they are written in the sources.

const list = (types, between) => types.map((type) => typeText(type)).join(between);
const grouped = (type) =>
  /^(?:union|intersection|conditional|typeOperator)$/.test(type.type) ||
  type.declaration?.signatures !== undefined
    ? `(${typeText(type)})`
    : typeText(type);

/** Unions that a public type stands for: the compiler shows the words and not the name. */
const namedUnions = new Map();
const keyOf = (types) => types.map(typeText).sort().join(' | ');

/** Lets a name stand for a long union of words. */
export function nameUnion(words, name) {
  if (words.length > 3) namedUnions.set([...words].sort().join(' | '), name);
}

const TEXTS = {
  array: ({ elementType }) => `${grouped(elementType)}[]`,
  intersection: ({ types }) => types.map(grouped).join(' & '),
  union: ({ types }) => namedUnions.get(keyOf(types)) ?? list(types, ' | '),
  tuple: ({ elements = [] }) => `[${list(elements, ', ')}]`,
  namedTupleMember: ({ name, isOptional, element }) =>
    `${name}${isOptional ? '?' : ''}: ${typeText(element)}`,
  rest: ({ elementType }) => `...${typeText(elementType)}`,
  optional: ({ elementType }) => `${typeText(elementType)}?`,
  typeOperator: ({ operator, target }) => `${operator} ${typeText(target)}`,
  indexedAccess: ({ objectType, indexType }) => `${grouped(objectType)}[${typeText(indexType)}]`,
  query: ({ queryType }) => `typeof ${typeText(queryType)}`,
  literal: ({ value }) => (typeof value === 'string' ? `'${value}'` : String(value)),
  reference: ({ name, typeArguments = [] }) =>
    typeArguments.length === 0 ? name : `${name}<${list(typeArguments, ', ')}>`,
  reflection: ({ declaration }) => declarationText(declaration),
};

/** A type as one line of text. */
export function typeText(type) {
  if (type === undefined) return 'unknown';
  return TEXTS[type.type]?.(type) ?? type.toString();
}

function declarationText(declaration) {
  const [signature] = declaration.signatures ?? [];
  if (signature !== undefined) return `${parametersText(signature)} => ${typeText(signature.type)}`;
  const fields = (declaration.children ?? []).map(
    (field) => `${field.name}${field.flags.isOptional ? '?' : ''}: ${typeText(field.type)}`,
  );
  for (const { parameters = [], type } of declaration.indexSignatures ?? []) {
    const [key] = parameters;
    fields.push(`[${key?.name}: ${typeText(key?.type)}]: ${typeText(type)}`);
  }
  return fields.length === 0 ? '{}' : `{ ${fields.join('; ')} }`;
}

/** The parameters of a function in brackets. */
export function parametersText({ parameters = [] }) {
  const texts = parameters.map(({ name, flags, type, defaultValue }) => {
    const rest = flags.isRest ? '...' : '';
    const optional = flags.isOptional || defaultValue !== undefined ? '?' : '';
    return `${rest}${name}${optional}: ${typeText(type)}`;
  });
  return `(${texts.join(', ')})`;
}

/** A function as it is declared; a long one has a line for each parameter. */
export function signatureText(signature) {
  const generic = (signature.typeParameters ?? []).map(({ name, type }) =>
    type === undefined ? name : `${name} extends ${typeText(type)}`,
  );
  const of = generic.length === 0 ? '' : `<${generic.join(', ')}>`;
  const { name } = signature;
  const line = `function ${name}${of}${parametersText(signature)}: ${typeText(signature.type)};`;
  if (line.length <= 90) return line;
  const parameters = parametersText(signature).slice(1, -1);
  return `function ${name}${of}(\n  ${parameters},\n): ${typeText(signature.type)};`;
}
