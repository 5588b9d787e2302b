import ts from 'typescript';
import { parse, visit } from './imports.ts';
import type { SourceText } from './source-files.ts';

const isReadOffFunction = (node: ts.Node): boolean =>
  ts.isTypeReferenceNode(node) && ts.isIdentifier(node.typeName) && node.typeName.text === 'ReturnType';

const isExported = (node: ts.VariableStatement | ts.FunctionDeclaration): boolean =>
  node.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;

/** Names of the exported functions of a file that leave it to the compiler what they return. */
const untypedFunctions = (source: ts.SourceFile): string[] =>
  source.statements.flatMap((node) => {
    if (ts.isFunctionDeclaration(node)) return isExported(node) && !node.type ? [node.name?.text ?? 'default'] : [];
    if (!ts.isVariableStatement(node) || !isExported(node)) return [];
    return node.declarationList.declarations.flatMap(({ name, type, initializer: made }) => {
      const isFunction = made && (ts.isArrowFunction(made) || ts.isFunctionExpression(made));
      return isFunction && !type && !made.type ? [name.getText()] : [];
    });
  });

/**
 * What in a file of `src/usecases` or `views` keeps a page model from being a type that is written down: `ReturnType`, of
 * whatever function; and a function called `show…` that is exported without saying what it returns. A sentence each.
 *
 * Example: `export const showYard = async () => ({ today: '' });` has one, `type Yard = ReturnType<typeof showYard>;` too.
 */
export const pageModelFaults = (file: SourceText): string[] => {
  const source = parse(file);
  const faults = untypedFunctions(source)
    .filter((name) => /^show[A-Z]/.test(name))
    .map((name) => `${file.path}: ${name} does not say what it returns`);
  visit(source, (node) => {
    if (isReadOffFunction(node)) faults.push(`${file.path}: ${node.getText()} is no type that is written down`);
  });
  return faults;
};
