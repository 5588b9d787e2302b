/** "€129.00", "¥129", "KWD 1.250": in the yard's currency, with as many decimals as that has. */
export const moneyText = (amount: number, currency: string): string =>
  new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay: 'narrowSymbol' }).format(amount);

/** How a price stands in its field: bare figures with the currency's decimals. */
export const moneyField = (amount: number, currency: string): string =>
  amount.toFixed(
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2,
  );
