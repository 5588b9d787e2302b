/** "1 piece", "4 pieces" */
export const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
