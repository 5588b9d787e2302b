import ts from 'typescript';
import type { SourceText } from './source-files.ts';

/** One exported name of a file, with the text of its docstring; null where it has none. */
export interface DocumentedExport {
  name: string;
  doc: string | null;
}

const isExported = (statement: ts.Statement): boolean =>
  ts.canHaveModifiers(statement) &&
  (ts.getModifiers(statement) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

const namesOf = (statement: ts.Statement): string[] => {
  if (ts.isVariableStatement(statement))
    return statement.declarationList.declarations.map((declared) => declared.name.getText());
  return ts.isFunctionDeclaration(statement) ||
    ts.isClassDeclaration(statement) ||
    ts.isInterfaceDeclaration(statement) ||
    ts.isTypeAliasDeclaration(statement)
    ? [statement.name?.text ?? 'default']
    : [statement.getText()];
};

/** The text between the marks of the comment right above a statement, its lines joined. */
const docOf = (statement: ts.Statement): string | null => {
  const comment = ts.getJSDocCommentsAndTags(statement).at(-1)?.getText();
  const lines = comment
    ?.replace(/^\/\*\*|\*\/$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, '').trim());
  return lines?.join(' ').trim() || null;
};

/** What a file exports under a name of its own. What it passes on from another file is documented there. */
export const exportsOf = ({ path, text }: SourceText): DocumentedExport[] =>
  ts
    .createSourceFile(path, text, ts.ScriptTarget.ES2022, true)
    .statements.filter(isExported)
    .flatMap((statement) => namesOf(statement).map((name) => ({ name, doc: docOf(statement) })));

/** The exports without a docstring, or with one that says nothing beyond one or two words, as "path: name". */
export const docstringFaults = (file: SourceText): string[] =>
  exportsOf(file)
    .filter(({ doc }) => doc === null || doc.split(/\s+/).length < 3)
    .map(({ name }) => `${file.path}: ${name}`);

/** A worked example of a docstring: "`call(1)` is 2" (or "reads 2"), both sides as they are written. */
export interface WorkedExample {
  call: string;
  answer: string;
}

const EXAMPLE =
  /`([A-Za-z][\w.]*\([^`]*\))` (?:is|are|reads) (`[^`]+`|"[^"]*"|\[[^\]]*\]|[-\d.]+\d|\d|true|false|null)(?![\w"])/g;

/** The examples of a docstring that are written as a call and its answer. */
export const examplesIn = (doc: string): WorkedExample[] =>
  Array.from(doc.matchAll(EXAMPLE), ([, call, answer]) => ({ call: call!, answer: answer!.replaceAll('`', '') }));

/** Works an expression out among names that are known; a name that is not known is a ReferenceError. */
export const workedOut = (expression: string, known: Record<string, unknown>): unknown =>
  new Function(...Object.keys(known), `return (${expression});`)(...Object.values(known));
