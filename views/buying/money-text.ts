/** The yard's currency until it can be chosen. */
const CURRENCY = '€';

/** "€129.00". A tenth of a cent and less is rounded away. */
export const moneyText = (amount: number): string => `${CURRENCY}${amount.toFixed(2)}`;
