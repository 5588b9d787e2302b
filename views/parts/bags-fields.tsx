import type { FC } from 'hono/jsx';
import type { BagsToCount } from '../../src/usecases/buying/bags-to-count.ts';
import { AmountField } from './amount-field.tsx';
import { dayText } from './day-text.ts';
import type { FieldErrors } from './field.tsx';
import { amountText, isMeasure } from './quantity-text.ts';

interface BagsFieldsProps {
  bags: readonly BagsToCount[];
  /** The field for all of the material: those of its bags are named after it. */
  of: string;
  /** Where several forms of a page have fields of one name. */
  id?: string;
  unit: string;
  today: string;
  typedIn: (field: string) => string;
  errors: FieldErrors;
}

/** "Opened Sat 10 Apr", "Bag date Sun 2 May", "No known date". */
const nameOf = ({ useBy, openedAt }: BagsToCount, today: string): string => {
  const parts = [
    openedAt === null ? '' : `opened ${dayText(openedAt.slice(0, 10), today)}`,
    useBy === null ? '' : `bag date ${dayText(useBy, today)}`,
  ];
  const text = parts.filter(Boolean).join(', ') || 'no known date';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
};

/** The bags of a material one by one: what the book has of each date, beside what was seen of it. */
export const BagsFields: FC<BagsFieldsProps> = ({ bags, of, id, unit, today, typedIn, errors }) => (
  <>
    {bags.map((one, row) => {
      const field = `${of}Bags${row}`;
      return (
        <>
          <input type="hidden" name={`${field}UseBy`} value={one.useBy ?? ''} />
          <input type="hidden" name={`${field}OpenedAt`} value={one.openedAt ?? ''} />
          <AmountField
            name={field}
            {...(id === undefined ? {} : { id: `${id}-bags-${row}` })}
            label={nameOf(one, today)}
            hint={`${amountText(one.there, unit)} by the book`}
            counts={!isMeasure(unit)}
            value={typedIn(field)}
            errors={errors}
          />
        </>
      );
    })}
  </>
);
