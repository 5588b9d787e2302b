import type { z } from 'zod';
import { type Fault, pathText } from './fault.ts';

const shapeMessage = (issue: z.core.$ZodIssue): string => {
  if (issue.code === 'invalid_type')
    return issue.input === undefined
      ? 'is missing'
      : `has to be ${issue.expected === 'int' ? 'a whole number' : `of type ${issue.expected}`}`;
  if (issue.code === 'invalid_value') return `has to be ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`;
  return issue.message;
};

/**
 * What a schema found wrong with a file, each with its JSON path, in plain words. Every unknown field is a fault of
 * its own. The schema has to be asked with `reportInput`: a missing field is told by its input.
 */
export const shapeFaults = (issues: readonly z.core.$ZodIssue[]): Fault[] =>
  issues.flatMap((issue): Fault[] => {
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({
        path: pathText([...issue.path, key]),
        message: 'is not a field of this format',
      }));
    return [{ path: pathText(issue.path), message: shapeMessage(issue) }];
  });
