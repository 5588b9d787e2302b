/**
 * A time of day as "HH:MM", of either clock; null where it is none.
 *
 * Example: "8:30" is "08:30", "14.30" and "2:30 pm" are "14:30", "12 am" is "00:00".
 */
export const clockTyped = (text: string): string | null => {
  const [, hours = '', minutes, half] = /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:([ap])\.?m\.?)?$/i.exec(text.trim()) ?? [];
  if (hours === '' || (minutes === undefined && half === undefined)) return null;
  const [hour, minute] = [Number(hours), Number(minutes ?? 0)];
  if (minute > 59 || (half === undefined ? hour > 23 : hour < 1 || hour > 12)) return null;
  const afternoon = half?.toLowerCase() === 'p' ? 12 : 0;
  const ofDay = half === undefined ? hour : (hour % 12) + afternoon;
  return `${String(ofDay).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
};
