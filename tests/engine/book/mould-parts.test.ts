import { describe, expect, test } from 'vitest';
import type { MouldPart } from '../../../shared/mould-part.ts';
import { readYardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { sayOfPart } from '../../../src/engine/book/mould-parts.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const ID = '900 no. 1';
const yardOf = (changes: Partial<YardFileInput> = {}) => {
  const read = readYardFile(smallYard(changes));
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return read.yard;
};
const IN_USE = yardOf();
const OUT = yardOf({ moulds: [{ ...base.moulds[0]!, condition: 'damaged' }, base.moulds[1]!] });
const SCRAPPED = yardOf({ moulds: [{ ...base.moulds[0]!, condition: 'retired' }, base.moulds[1]!] });
const FULL = yardOf({ inMould: [{ mould: ID, casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }] });
const DETAILS = { damageNote: '', repairedOn: null, cameOut: null };
const broken = (part: string, tookOut = true): MouldPart => ({
  ...{ part, condition: 'broken' },
  ...(tookOut ? { tookOut } : {}),
});
const said = (part: string, condition: MouldPart['condition'], note = '') => ({ part, condition, note });

describe('a part of a set', () => {
  test('broken takes a mould out of use that was in use', () => {
    const done = sayOfPart(IN_USE, ID, [], said('ends', 'broken', 'split'), { ...DETAILS, repairedOn: '2027-04-12' });
    expect(done).toMatchObject({
      entries: [{ kind: 'mould', mould: ID, patch: { condition: 'damaged', repairedOn: '2027-04-12' } }],
      parts: [{ part: 'ends', condition: 'broken', note: 'split', tookOut: true }],
      records: [{ kind: 'part', part: 'ends', condition: 'broken', reason: 'split', mark: 'damaged' }],
    });
  });

  test('worn is only a note', () => {
    expect(sayOfPart(IN_USE, ID, [], said('sides', 'worn', 'soft edge'), DETAILS)).toEqual({
      ok: true,
      entries: [],
      parts: [{ part: 'sides', condition: 'worn', note: 'soft edge' }],
      records: [
        { kind: 'part', at: IN_USE.yard.now, mould: ID, part: 'sides', condition: 'worn', reason: 'soft edge' },
      ],
    });
  });

  test('mended frees the mould, and so does one that is only worn, or that it has none of', () => {
    for (const condition of ['whole', 'worn', 'none'] as const)
      expect(sayOfPart(OUT, ID, [broken('ends')], said('ends', condition), DETAILS)).toMatchObject({
        entries: [{ patch: { condition: 'ready' } }],
        records: [{ kind: 'part', condition, mark: 'mended' }],
      });
  });

  test('of two that are broken frees it once both are mended', () => {
    const second = sayOfPart(OUT, ID, [broken('ends')], said('base', 'broken'), DETAILS);
    expect(second).toMatchObject({ parts: [broken('ends'), broken('base')] });
    expect(second.ok && second.records[0]).not.toHaveProperty('mark');
    const first = sayOfPart(OUT, ID, [broken('ends'), broken('base')], said('ends', 'whole'), DETAILS);
    expect(first).toMatchObject({ entries: [], parts: [{ part: 'ends', condition: 'whole' }, broken('base')] });
    expect(sayOfPart(OUT, ID, first.ok ? first.parts : [], said('base', 'whole'), DETAILS)).toMatchObject({
      entries: [{ patch: { condition: 'ready' } }],
    });
  });

  test('leaves a mould out of use that was damaged before', () => {
    const also = sayOfPart(OUT, ID, [], said('ends', 'broken'), { ...DETAILS, damageNote: 'run over' });
    expect(also).toMatchObject({
      entries: [{ patch: { condition: 'damaged', damageNote: 'run over' } }],
      parts: [broken('ends', false)],
    });
    expect(sayOfPart(OUT, ID, [broken('ends', false)], said('ends', 'whole'), DETAILS)).toMatchObject({ entries: [] });
  });

  test('broken asks for the piece in the mould, which may be lost with it', () => {
    expect(sayOfPart(FULL, ID, [], said('base', 'broken'), DETAILS)).toMatchObject({
      ok: false,
      faults: [{ path: 'cameOut' }],
    });
    const lost = sayOfPart(FULL, ID, [], said('base', 'broken', 'cracked'), { ...DETAILS, cameOut: 'scrap' });
    expect(lost).toMatchObject({
      entries: [{ kind: 'emptied' }, { kind: 'mould' }],
      records: [{ kind: 'stripped', cameOut: 'scrap', reason: 'cracked' }, { kind: 'part' }],
    });
  });

  test('is refused of a mould that is scrapped or not there', () => {
    expect(sayOfPart(SCRAPPED, ID, [], said('base', 'worn'), DETAILS)).toMatchObject({ ok: false });
    expect(sayOfPart(IN_USE, 'none', [], said('base', 'worn'), DETAILS)).toMatchObject({ ok: false });
  });
});
