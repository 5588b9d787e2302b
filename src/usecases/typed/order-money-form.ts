import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { moneyOrNone } from './money-field.ts';
import { TypedReader } from './typed-reader.ts';

/** What is asked for an order, in the yard's money; null: nothing said. */
export interface PriceTyped {
  price: number | null;
  deposit: number | null;
}

/** The price of an order and what of it is to be paid beforehand. */
export const priceTyped = (fields: FormFields, currency: string): Outcome<PriceTyped> => {
  const reader = new TypedReader(fields);
  const typed = { price: moneyOrNone(reader, 'price', currency), deposit: moneyOrNone(reader, 'deposit', currency) };
  const { price, deposit } = typed;
  if (reader.faults.length === 0 && deposit !== null && price === null)
    reader.refuse('price', 'A deposit of what price? Write the price too.');
  if (price !== null && deposit !== null && deposit > price) reader.refuse('deposit', 'That is more than the price.');
  return reader.outcome(typed);
};

/** Money that came, or went back. */
export interface PaymentTyped {
  amount: number;
  on: string;
  back: boolean;
  note: string | null;
}

/** A payment: how much, when (today where no day is typed), and which way it went. */
export const paymentTyped = (fields: FormFields, currency: string, how: DateReading): Outcome<PaymentTyped> => {
  const reader = new TypedReader(fields, how);
  const amount = moneyOrNone(reader, 'amount', currency);
  if (amount === 0 || (amount === null && reader.faults.length === 0)) reader.refuse('amount', 'How much was paid?');
  const on = reader.dateOrNone('paidOn') ?? how.today;
  if (on > how.today) reader.refuse('paidOn', 'That day is still to come.');
  const note = reader.text('payNote');
  return reader.outcome({ amount: amount ?? 0, on, back: reader.text('way') === 'back', note: note || null });
};
