import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { longestPacking } from '../../engine/calendar/longest-packing.ts';

interface Parcel {
  lines: OrderLine[];
  minutes: number;
}

const put = ({ lines }: Parcel, line: OrderLine): void => {
  const same = lines.find(({ kit }) => kit !== undefined && kit === line.kit);
  if (same) same.quantity += line.quantity;
  else lines.push({ ...line });
};

/**
 * The lines of an order as parcels of whole kits, none of which takes longer to pack than `longest` minutes; what takes no
 * packing goes with the first. Null where one kit alone takes longer.
 *
 * Example: five kits of 60 minutes each and 150 minutes at a time are three parcels: two kits, two, and one.
 */
export const parcelsOf = (
  lines: readonly OrderLine[],
  { kits }: Pick<YardFile, 'kits'>,
  longest: number,
): OrderLine[][] | null => {
  const parcels: Parcel[] = [{ lines: [], minutes: 0 }];
  for (const line of lines) {
    const each = kits.find(({ id }) => id === line.kit)?.packMinutes ?? 0;
    if (each > longest) return null;
    if (each === 0) put(parcels[0]!, line);
    for (let left = each === 0 ? 0 : line.quantity; left > 0; ) {
      const last = parcels.at(-1)!;
      const fits = Math.min(left, Math.floor((longest - last.minutes) / each));
      if (fits > 0) put(last, { ...line, quantity: fits });
      last.minutes += fits * each;
      left -= fits;
      if (left > 0) parcels.push({ lines: [], minutes: 0 });
    }
  }
  return parcels.map((parcel) => parcel.lines).filter((one) => one.length > 0);
};

/** The parcels of an order that is too large to be packed in one session; null for any other, and where none can be made. */
export const parcelsNeeded = (lines: readonly OrderLine[], yard: YardFile): OrderLine[][] | null => {
  const parcels = parcelsOf(lines, yard, longestPacking(yard));
  return parcels !== null && parcels.length > 1 ? parcels : null;
};
