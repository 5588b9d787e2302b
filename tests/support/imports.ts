import ts from 'typescript';
import type { SourceText } from './source-files.ts';

/** One import of a file: from where, as it is written there, and whether nothing of it runs. */
export interface Import {
  from: string;
  typesOnly: boolean;
}

/** The syntax tree of a file. */
export const parse = ({ path, text }: SourceText): ts.SourceFile =>
  ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true, path.endsWith('x') ? ts.ScriptKind.TSX : undefined);

/** Shows every node of a tree, the outer ones first. */
export const visit = (node: ts.Node, look: (node: ts.Node) => void): void => {
  look(node);
  ts.forEachChild(node, (child) => visit(child, look));
};

const isTypesOnly = (node: ts.ImportDeclaration | ts.ExportDeclaration): boolean => {
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  const clause = node.importClause;
  if (!clause) return false;
  if (clause.isTypeOnly) return true;
  const names = clause.namedBindings;
  return !clause.name && !!names && ts.isNamedImports(names) && names.elements.every((name) => name.isTypeOnly);
};

/** Where a call such as `import('x')` or `require('x')` leads; "?" when only running it could tell. */
const calledModule = (node: ts.CallExpression): string | undefined => {
  const isImport = node.expression.kind === ts.SyntaxKind.ImportKeyword;
  const isRequire = ts.isIdentifier(node.expression) && node.expression.text === 'require';
  if (!isImport && !isRequire) return undefined;
  const [module] = node.arguments;
  return module && ts.isStringLiteralLike(module) ? module.text : '?';
};

const importAt = (node: ts.Node): Import | undefined => {
  if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier)
    return { from: (node.moduleSpecifier as ts.StringLiteral).text, typesOnly: isTypesOnly(node) };
  if (ts.isImportEqualsDeclaration(node) && ts.isExternalModuleReference(node.moduleReference))
    return { from: (node.moduleReference.expression as ts.StringLiteral).text, typesOnly: node.isTypeOnly };
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal))
    return { from: node.argument.literal.text, typesOnly: true };
  const called = ts.isCallExpression(node) ? calledModule(node) : undefined;
  return called === undefined ? undefined : { from: called, typesOnly: false };
};

/** All that a file imports, whichever way it is written. */
export const importsOf = (file: SourceText): Import[] => {
  const found: Import[] = [];
  visit(parse(file), (node) => {
    const one = importAt(node);
    if (one) found.push(one);
  });
  return found;
};
