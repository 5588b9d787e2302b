import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { YardMould } from '../../src/usecases/yard/show-yard-moulds.ts';
import { countWord } from '../parts/quantity-text.ts';

/** "Panel 1200, or Panel 900 after 15 minutes of changing over" */
export const makesText = ({ makes }: Pick<YardMould, 'makes'>): string => {
  const each = makes.map(({ name, changeMinutes }) =>
    changeMinutes > 0 ? `${name} after ${countText(changeMinutes, 'minute')} of changing over` : name,
  );
  return each.join(', or ');
};

/** "every 8 turns: 10 minutes, dry 60 minutes later" */
export const coatText = ({
  oilEveryTurns,
  oilMinutes,
  oilDryMinutes,
}: Pick<YardMould, 'oilEveryTurns' | 'oilMinutes' | 'oilDryMinutes'>): string =>
  oilEveryTurns === null
    ? 'never'
    : `every ${oilEveryTurns === 1 ? 'turn' : `${oilEveryTurns} turns`}: ${countText(oilMinutes, 'minute')}, dry ${countText(oilDryMinutes, 'minute')} later`;

/** "12 moulds in use: 3 of 1200 and 9 of 900. One more is scrapped." */
export const yardMouldsAnswer = (moulds: readonly Pick<YardMould, 'kind' | 'condition'>[]): string => {
  const inUse = moulds.filter(({ condition }) => condition !== 'retired');
  const gone = moulds.length - inUse.length;
  const rest = gone === 0 ? '' : ` ${countWord(gone)} more ${plural(gone, 'is', 'are')} scrapped.`;
  if (inUse.length === 0) return `No mould is in use.${rest}`;
  const kinds = [...new Set(inUse.map(({ kind }) => kind))];
  const each = kinds.map((kind) => `${inUse.filter((one) => one.kind === kind).length} of ${kind}`);
  return `${countText(inUse.length, 'mould')} in use: ${listText(each)}.${rest}`;
};
