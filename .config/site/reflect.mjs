// Reads the public names of the sources with their comments and types.
import { Application, ReflectionKind, TSConfigReader, TypeDocReader } from 'typedoc';
import { join } from 'node:path';
import ts from 'typescript';
import { ROOT } from './paths.mjs';
import { nameUnion, typeText } from './type-text.mjs';

/** The project as TypeDoc sees it; a link that leads nowhere and a name that is not exported are errors. */
export async function reflectSources() {
  const app = await Application.bootstrap({ options: join(ROOT, '.config', 'typedoc.json') }, [
    new TypeDocReader(),
    new TSConfigReader(),
  ]);
  const project = await app.convert();
  if (project === undefined) throw new Error('the sources could not be read');
  app.validate(project);
  if (app.logger.hasErrors() || app.logger.hasWarnings()) {
    throw new Error('the doc comments have faults, listed above');
  }
  spellOut(project, app.getEntryPoints()[0].program);
  return project;
}

/** Gives a type that is taken from a constant, such as `keyof typeof UNITS`, its words. */
function spellOut(project, program) {
  const checker = program.getTypeChecker();
  const { NoTruncation, InTypeAlias, UseSingleQuotesForStringLiteralType } = ts.TypeFormatFlags;
  const flags = NoTruncation | InTypeAlias | UseSingleQuotesForStringLiteralType;
  for (const reflection of project.getReflectionsByKind(ReflectionKind.TypeAlias)) {
    if (!/\b(?:typeof|keyof)\b/.test(typeText(reflection.type))) continue;
    const file = program.getSourceFile(reflection.sources[0].fullFileName);
    const symbol = checker.getSymbolAtLocation(file)?.exports?.get(reflection.name);
    const type = symbol && checker.getDeclaredTypeOfSymbol(symbol);
    if (type === undefined) continue;
    reflection.spelledOut = checker.typeToString(type, undefined, flags);
    nameUnion(reflection.spelledOut.split(' | '), reflection.name);
  }
}
