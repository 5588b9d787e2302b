import type { BeginModel } from '../../src/usecases/begin/show-begin.ts';
import type { FieldErrors } from '../parts/field.tsx';

/** What the pages to begin with are drawn from: the yard that is there, what is wrong by field, and what was typed. */
export interface BeginProps {
  model: BeginModel;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}
