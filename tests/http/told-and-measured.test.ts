import { expect, test } from 'vitest';
import { formsIn } from '../support/page-form.ts';
import { look, nextStep, type RecallYard, recallYard, send, takeIn } from '../support/recall-yard.ts';
import { textOf } from '../support/screens.ts';

/** Follows Today tap by tap, each a while after the step is over. */
const workOn = async (yard: RecallYard, day: string, minutesLater: number): Promise<void> => {
  yard.clock.setOn(yard.clock.at(day, '07:55'));
  await takeIn(yard, 3);
  for (let taps = 0; taps < 25; taps++) {
    const next = await nextStep(yard);
    if (!next) return;
    yard.clock.setOn(next.step.end + minutesLater);
    await send(yard, next.step.done!, next.step.kind === 'strip' ? { cameOut: 'good', sure: 'early' } : {});
  }
};

const textAt = async ({ app }: RecallYard, path: string): Promise<string> => textOf(await app.request(path));

const undo = (yard: RecallYard, change: string) =>
  yard.app.request('/undo', { method: 'POST', body: new URLSearchParams({ change, back: '/' }) });

test('a batch is found from its mould, takes what was different, and goes with the archive', async () => {
  const yard = await recallYard();
  await workOn(yard, '2027-04-09', 0);
  const mould = await look(yard, '/mould/900%20no.%203');
  const batch = /href="(\/batch\/[^"]+)"/.exec(mould)![1]!;
  expect(await textAt(yard, batch)).toContain('1 bag of Thin panel mix, full Fri 9 Apr');
  const [form] = formsIn(await look(yard, batch));
  const wrong = await yard.app.request(batch, {
    method: 'POST',
    body: new URLSearchParams({ bagDates: 'soon', water: 'much' }),
  });
  expect(wrong.status).toBe(422);
  const told = { bagDates: '3 Feb; 10 Feb', water: '4.5', mortarCelsius: '21', airCelsius: '12.5', by: 'Ann' };
  const change = await send(yard, form!, told);
  const after = await textAt(yard, batch);
  expect(after).toContain('Fast-setting mortar: bag of Wed 3 Feb; Fast-setting mortar: bag of Wed 10 Feb');
  expect(after).toContain('Water in all 4.5 l Mortar 21 °C Air 12.5 °C Mixed by Ann');
  const archive = await look(yard, '/yard/files/archive.json');
  const other = await recallYard();
  other.clock.setOn(yard.clock.minute);
  const file = new FormData();
  file.set('file', new File([archive], 'yard.archive.json'));
  const shown = await (await other.app.request('/yard/files/look', { method: 'POST', body: file })).text();
  const field = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(shown)![1]!;
  const body = new URLSearchParams({ file: field('file'), revision: field('revision') });
  await other.app.request('/yard/files/read-in', { method: 'POST', body });
  expect(await textAt(other, batch)).toContain('Mixed by Ann');
  const path = '/trace.csv?mould=900%20no.%203';
  expect(await look(other, path)).toBe(await look(yard, path));
  await undo(yard, change!);
  expect(await textAt(yard, batch)).not.toContain('Mixed by Ann');
});

test('what taps measured stands beside the figure, and is taken over and back by one tap each', async () => {
  const yard = await recallYard();
  await workOn(yard, '2027-04-09', 2);
  const early = await textAt(yard, '/yard/measured');
  expect(early).toMatch(/Strip: Panel 900 .* measured; the figures say 8\. Of fewer than 5 nothing is taken over/);
  await workOn(yard, '2027-04-10', 2);
  const text = await textAt(yard, '/yard/measured');
  expect(text).toMatch(
    /Clean and set up: Panel 900 \d+ minutes in the middle, half of them \d+ to \d+, of \d+ measured; the figures say 18\./,
  );
  expect(text).toContain('If it is taken over: setting up Panel 900 12 to ');
  const [form] = formsIn(await look(yard, '/yard/measured'));
  const stale = await yard.app.request('/yard/measured', {
    method: 'POST',
    body: new URLSearchParams({ ...form!.fields, minutes: '99' }),
  });
  expect(stale.status).toBe(422);
  const body = new URLSearchParams(form!.fields);
  const first = await yard.app.request('/yard/measured', { method: 'POST', body });
  const seen = /name="seen" value="([^"]*)"/.exec(first.status === 200 ? await first.text() : '')?.[1];
  const change = first.headers.get('Location')
    ? new URL(first.headers.get('Location')!, 'http://yard').searchParams.get('done')
    : await send(yard, form!, { seen: seen ?? '' });
  expect(await textAt(yard, '/yard/measured')).not.toContain('the figures say 18.');
  await undo(yard, change!);
  expect(await textAt(yard, '/yard/measured')).toContain('the figures say 18.');
});
