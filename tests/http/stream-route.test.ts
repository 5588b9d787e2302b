import { expect, test } from 'vitest';
import { demoScreens } from '../support/screens.ts';

test('the stream says the revision, and another one once something was changed', async () => {
  const { get, post } = await demoScreens();
  const answer = await get('/changes/stream');
  expect(answer.headers.get('Content-Type')).toBe('text/event-stream');
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  const event = /^event: revision\ndata: (\d+)\n\n$/;
  const first = event.exec((await reader?.read())?.value ?? '')?.[1];
  expect((await post('/moulds/600%20no.%202/cleaned', {})).status).toBe(303);
  const second = event.exec((await reader?.read())?.value ?? '')?.[1];
  await reader?.cancel();
  expect(Number(second)).toBe(Number(first) + 1);
});
