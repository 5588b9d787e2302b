import { posix } from 'node:path';
import { importsOf } from './imports.ts';
import type { SourceText } from './source-files.ts';

type Graph = ReadonlyMap<string, readonly string[]>;

const graphOf = (files: readonly SourceText[]): Graph => {
  const paths = new Set(files.map(({ path }) => path));
  const targets = (file: SourceText): string[] =>
    importsOf(file)
      .filter(({ from }) => from.startsWith('.'))
      .map(({ from }) => posix.join(posix.dirname(file.path), from))
      .filter((target) => paths.has(target));
  return new Map(files.map((file) => [file.path, [...new Set(targets(file))]]));
};

/** The way on from the last file of `way` that comes back to a file of it; null when there is none. */
const circleFrom = (graph: Graph, way: readonly string[], done: Set<string>): string[] | null => {
  const last = way.at(-1)!;
  for (const next of graph.get(last) ?? []) {
    if (way.includes(next)) return [...way.slice(way.indexOf(next)), next];
    const circle = done.has(next) ? null : circleFrom(graph, [...way, next], done);
    if (circle) return circle;
  }
  done.add(last);
  return null;
};

/**
 * Circles of imports among files, imports of types as well, each as the way round: "a.ts > b.ts > a.ts". One for each
 * knot of files, not every way through it: none is left out where there are any.
 */
export const importCircles = (files: readonly SourceText[]): string[] => {
  const graph = graphOf(files);
  const done = new Set<string>();
  const circles = [...graph.keys()].flatMap((path) => {
    const circle = done.has(path) ? null : circleFrom(graph, [path], done);
    for (const member of circle ?? []) done.add(member);
    return circle ? [circle.join(' > ')] : [];
  });
  return circles;
};
