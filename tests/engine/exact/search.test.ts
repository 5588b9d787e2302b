import { describe, expect, it } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { canSearchAll } from '../../../src/engine/exact/scope.ts';
import { searchAll } from '../../../src/engine/exact/search.ts';
import { smallYard } from '../../support/small-yard.ts';

const panel = (id: string, quantity: number, due?: string) => ({
  id,
  weight: 1,
  due,
  lines: [{ casting: 'panel-900', quantity }],
});

const oneMould = (more: Partial<YardFile['moulds'][number]> = {}, orders = [panel('27-001', 2, '2027-04-10')]) => {
  const yard = smallYard({ moulds: smallYard().moulds.slice(0, 1), orders });
  return { ...yard, moulds: yard.moulds.map((mould) => ({ ...mould, ...more })) };
};

const searched = (yard: YardFile, below = Number.POSITIVE_INFINITY, mostSteps = 1000) => {
  const problem = compile(yard);
  const { best, isProven, steps } = searchAll(problem, [0], ([at]) => at!, below, mostSteps);
  return { at: best && problem.calendar.instantText(best.worth), worth: best?.worth, isProven, steps };
};

describe('a search of everything', () => {
  it('ends with the soonest minute, worked out by hand', () => {
    // 12 to set up, 10 to mix, 7 to fill, 75 in the mould, 8 to strip: 9:52, and 6 more to clean for the second: 11:50.
    expect(searched(oneMould())).toMatchObject({ at: '2027-04-10T11:50:00+01:00', isProven: true });
  });

  it('finds nothing before that, and has then proven it', () => {
    const { worth } = searched(oneMould());
    expect(searched(oneMould(), worth)).toMatchObject({ at: null, isProven: true });
    expect(searched(oneMould(), worth! + 1).at).toBe('2027-04-10T11:50:00+01:00');
  });

  it('proves nothing once it has taken too many steps', () => {
    const { steps } = searched(oneMould());
    expect(searched(oneMould(), Number.POSITIVE_INFINITY, steps).isProven).toBe(true);
    expect(searched(oneMould(), Number.POSITIVE_INFINITY, 3)).toMatchObject({ at: null, isProven: false });
  });
});

describe('a yard is searched through', () => {
  const all = (yard: YardFile) => canSearchAll(compile(yard), [0]);

  it('where one person makes few pieces', () => {
    expect(all(oneMould())).toBe(true);
    expect(all(oneMould({}, [panel('27-001', 10)]))).toBe(false);
  });

  it('and not where there are two, where lengths are cut, or something is under way', () => {
    const yard = oneMould();
    expect(all({ ...yard, work: yard.work.map((window) => ({ ...window, crew: 2 })) })).toBe(false);
    const cuts = [{ material: 'rod', lengthMm: 900, count: 2 }];
    expect(all({ ...yard, castings: yard.castings.map((casting) => ({ ...casting, cuts })) })).toBe(false);
    const { moulds, yard: figures } = yard;
    const strip = { mould: moulds[0]!.id, stripStart: figures.now, stripEnd: '2027-04-08T09:08:00+01:00' };
    const inMould = [{ mould: strip.mould, casting: 'panel-900', filledAt: '2027-04-03T09:00:00+01:00' }];
    const begun = { batches: [], pours: [], strips: [strip], packs: [], preps: [], coats: [] };
    expect(all({ ...yard, inMould })).toBe(true);
    expect(all({ ...yard, inMould, begun })).toBe(false);
  });
});
