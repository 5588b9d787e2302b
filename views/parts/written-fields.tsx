import type { FC } from 'hono/jsx';
import { ChoiceField, type FieldErrors } from './field.tsx';

const UNITS = [
  { value: 'metric', text: 'Millimetres and kilograms' },
  { value: 'US', text: 'Feet, inches and pounds' },
];
const ENGLISH = [
  { value: 'British', text: 'British English: the day before the month, a clock of 24 hours' },
  { value: 'US', text: 'US English: the month before the day, am and pm' },
];

interface WrittenProps {
  system: string | undefined;
  english: string | undefined;
  errors: FieldErrors;
}

/** What a yard measures with, and how its pages are written. */
export const WrittenFields: FC<WrittenProps> = ({ system, english, errors }) => (
  <>
    <ChoiceField
      name="system"
      label="Sizes and weights are shown in"
      hint="You can type either, whatever is chosen here."
      value={system}
      choices={UNITS}
      errors={errors}
    />
    <ChoiceField
      name="english"
      label="Pages are written in"
      hint="5/6 is read that way round too. What you type yourself is never changed."
      value={english}
      choices={ENGLISH}
      errors={errors}
    />
  </>
);
