import { request, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import express from 'express';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { smallerAnswers } from './smaller.ts';

const long = { items: Array.from({ length: 200 }, (_, at) => ({ key: `E1:P${String(at)}`, words: 'Falls everywhere, año' })) };
const short = { ok: true };
let server: Server;

beforeAll(async () => {
  const app = express();
  app.use(smallerAnswers);
  app.get('/long', (_, response) => void response.json(long));
  app.get('/short', (_, response) => void response.json(short));
  app.get('/text', (_, response) => void response.type('text/plain').send(JSON.stringify(long)));
  app.post('/long', (_, response) => void response.json(long));
  await new Promise<void>((resolve) => { server = app.listen(0, '127.0.0.1', () => resolve()); });
});
afterAll(() => new Promise((resolve) => { server.close(resolve); }));

function ask(path: string, takes: string, method = 'GET'): Promise<{ readonly headers: IncomingHttpHeaders; readonly bytes: Buffer }> {
  return new Promise((resolve, reject) => {
    request({ port: (server.address() as AddressInfo).port, host: '127.0.0.1', path, method, headers: { 'accept-encoding': takes } }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('end', () => resolve({ headers: answer.headers, bytes: Buffer.concat(chunks) }));
    }).on('error', reject).end();
  });
}

describe('an answer of JSON', () => {
  test.each([['br, gzip', 'br', brotliDecompressSync], ['gzip, deflate', 'gzip', gunzipSync]] as const)('for who takes %s travels as %s and says the same', async (takes, way, open) => {
    const { headers, bytes } = await ask('/long', takes);
    expect(headers['content-encoding']).toBe(way);
    expect(headers['content-length']).toBe(String(bytes.length));
    expect(headers.vary).toContain('Accept-Encoding');
    expect(bytes.length).toBeLessThan(JSON.stringify(long).length / 5);
    expect(JSON.parse(open(bytes).toString())).toEqual(long);
  });
  test('stays as it is where it is short, no JSON, an answer to a write, or not taken otherwise', async () => {
    const all = [await ask('/short', 'br'), await ask('/text', 'br'), await ask('/long', 'br', 'POST'), await ask('/long', 'identity')];
    expect(all.map(({ headers }) => headers['content-encoding'])).toEqual([undefined, undefined, undefined, undefined]);
    expect(all.map(({ bytes }) => JSON.parse(bytes.toString()) as unknown)).toEqual([short, long, long, long]);
  });
});
