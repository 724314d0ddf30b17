// Messages of the language server protocol on a stream: a header with the length in bytes, then JSON.
import type { Writable } from 'node:stream';

/** A request has method and id, a notification a method alone, an answer an id alone. */
export interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export function writeMessage(stream: Writable, message: unknown): void {
  const body = Buffer.from(JSON.stringify(message), 'utf8');
  stream.write(Buffer.concat([Buffer.from(`Content-Length: ${body.length}\r\n\r\n`, 'ascii'), body]));
}

/** A taker of chunks that hands on whole messages; anything else on the stream is a fault (a stray print, for example). */
export function messageReader(take: (message: Message) => void, fault: (why: string) => void): (chunk: Buffer) => void {
  let chunks: Buffer[] = [];
  let held = 0;
  let wanted: number | undefined;
  return (chunk) => {
    chunks.push(chunk);
    held += chunk.length;
    for (;;) {
      if (wanted !== undefined && held < wanted) return;
      let buffer: Buffer = chunks.length === 1 ? chunks[0]! : Buffer.concat(chunks);
      if (wanted === undefined) {
        const end = buffer.indexOf('\r\n\r\n');
        const header = buffer.toString('ascii', 0, end < 0 ? Math.min(buffer.length, 200) : end);
        if (!/^[\w-]/.test(header) && header !== '') return fault(`not a message: ${header}`);
        chunks = [buffer];
        if (end < 0) return held > 4096 ? fault(`not a message: ${header}`) : undefined;
        const length = /(?:^|\r\n)Content-Length: *(\d+)/i.exec(header)?.[1];
        if (length === undefined) return fault(`not a message: ${header}`);
        wanted = Number(length);
        buffer = buffer.subarray(end + 4);
      } else {
        const body = buffer.toString('utf8', 0, wanted);
        buffer = buffer.subarray(wanted);
        wanted = undefined;
        take(JSON.parse(body) as Message);
      }
      chunks = [buffer];
      held = buffer.length;
    }
  };
}
