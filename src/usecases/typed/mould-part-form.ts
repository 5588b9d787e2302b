import { MOULD_PARTS, OTHER_PART, PART_CONDITIONS, type PartCondition } from '../../../shared/mould-part.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import type { MouldWas } from './mould-mark-form.ts';
import { cameOutTyped } from './today-forms.ts';
import { TypedReader } from './typed-reader.ts';

interface PartTyped {
  part: string;
  condition: PartCondition;
  note: string;
  repairedOn: string | null;
  cameOut: CameOut | null;
  was: MouldWas;
}

/** "Base" typed by hand is the base that every mould has. */
const asListed = (name: string): string => MOULD_PARTS.find((part) => part === name.toLowerCase()) ?? name;

/** Which part of a mould's set, how it is, and what a mark of damage comes with. */
export const partTyped = (fields: FormFields, how: DateReading): Outcome<PartTyped> => {
  const reader = new TypedReader(fields, how);
  const isOther = fields.part === OTHER_PART;
  const part = isOther
    ? reader.words('otherPart', 'What is it called?')
    : reader.words('part', 'Say which part. Nothing was changed.');
  const condition = PART_CONDITIONS.find((one) => one === fields.condition);
  if (condition === undefined) reader.refuse('condition', 'Say how it is. Nothing was changed.');
  const [note, repairedOn] = [reader.text('partNote'), reader.dateOrNone('partRepairedOn')];
  const was = { condition: fields.conditionWas, repairedOn: fields.repairedOnWas };
  return reader.outcome({
    ...{ part: asListed(part), condition: condition ?? 'whole', note, repairedOn },
    ...{ cameOut: cameOutTyped(fields), was },
  });
};
