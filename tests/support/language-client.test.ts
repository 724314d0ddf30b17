// The test client speaks the protocol: framing by bytes, answers, notifications, faults. The server here is a few lines
// of Node that mirror what they get, sent in awkward pieces.
import { afterEach, expect, test } from 'vitest';
import { type LanguageClient, startLanguageServer } from '#tests/support/language-client';

const MIRROR = `
  let text = Buffer.alloc(0);
  const send = (message) => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    const whole = Buffer.concat([Buffer.from('Content-Length: ' + body.length + '\\r\\n\\r\\n'), body]);
    const half = whole.length >> 1;
    process.stdout.write(whole.subarray(0, half));
    setTimeout(() => process.stdout.write(whole.subarray(half)), 3);
  };
  let queue = Promise.resolve();
  const later = (message) => (queue = queue.then(() => new Promise((done) => { send(message); setTimeout(done, 6); })));
  process.stdin.on('data', (chunk) => {
    text = Buffer.concat([text, chunk]);
    for (;;) {
      const end = text.indexOf('\\r\\n\\r\\n');
      if (end < 0) return;
      const length = Number(/\\d+/.exec(text.toString('utf8', 0, end))[0]);
      if (text.length < end + 4 + length) return;
      const message = JSON.parse(text.toString('utf8', end + 4, end + 4 + length));
      text = text.subarray(end + 4 + length);
      if (message.method === 'exit') process.exit(7);
      if (message.method === 'fail') later({ id: message.id, error: { code: -32000, message: 'no' } });
      else if (message.method === 'print') process.stdout.write('  hello\\n');
      else if (message.method === 'ask') later({ id: 'x', method: 'workspace/configuration', params: { items: [1, 2] } });
      else if (message.id === 'x') later({ method: 'asked', params: message.result });
      else if (message.id !== undefined && message.method) later({ id: message.id, result: message.params ?? null });
      else if (message.method === 'textDocument/didChange')
        for (const count of [1, 2]) later({ method: 'textDocument/publishDiagnostics', params: { uri: message.params.textDocument.uri, version: message.params.textDocument.version,
          diagnostics: Array.from({ length: count }, () => ({ message: message.params.contentChanges[0].text })) } });
    }
  });`;

let client: LanguageClient | undefined;
afterEach(() => client?.kill());
const start = (patience = 5000) => (client = startLanguageServer(process.execPath, ['-e', MIRROR], { patience }));

test('requests, also many at once and with letters of several bytes', async () => {
  const server = start();
  const answers = await Promise.all([1, 2, 3].map((number) => server.request('mirror', { number, text: 'é😀 ½″' })));
  expect(answers).toEqual([1, 2, 3].map((number) => ({ number, text: 'é😀 ½″' })));
  expect(await server.end()).toBe(7);
});

test('changes are applied to the copy and waited for', async () => {
  const server = start();
  const uri = 'file:///a.screed';
  server.open(uri, 'room é😀 bath\r\n  size 8\n');
  server.replace(uri, 'é😀 bath', 'é😁 hall');
  server.replace(uri, '😁 hall', '😀 hall');
  server.change(uri, { range: { start: { line: 1, character: 7 }, end: { line: 1, character: 99 } }, text: "9'" });
  expect(server.textOf(uri)).toBe("room é😀 hall\r\n  size 9'\n");
  const published = await server.waitForDiagnostics(
    uri,
    (diagnostics) => diagnostics.length === 2 && diagnostics[0]!.message === "9'",
  );
  expect(published.version).toBe(4);
  expect(() => server.replace(uri, 'attic', '')).toThrow('does not stand');
});

test('requests of the server are answered', async () => {
  const server = start();
  server.notify('ask');
  expect(await server.next('asked')).toEqual([null, null]);
});

test('faults are told: an error, silence, a stray print, an end', async () => {
  const server = start(300);
  await expect(server.request('fail')).rejects.toThrow('fail: -32000 no');
  await expect(server.next('never')).rejects.toThrow('waited 300 ms for never');
  server.notify('print');
  await expect(server.request('mirror')).rejects.toThrow('not a message:   hello');
  await expect(startLanguageServer(process.execPath, ['-e', 'process.exit(3)']).request('mirror')).rejects.toThrow(
    'ended with 3',
  );
});
