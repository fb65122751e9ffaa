import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { pause } from '../../tools/child.mjs';

/** How to get in as one person of the demo company: members with a password, the customer by a link. */
export const SignIn = z.object({ role: z.string(), email: z.string().optional(), password: z.string().optional(), link: z.string().optional() });
export type SignIn = z.infer<typeof SignIn>;

const Ready = z.object({ msg: z.literal('demo ready'), signIns: z.array(SignIn).min(1) });

/** What the API itself said when the demo company was ready. */
export function demoSignIns(dataDir: string): SignIn[] {
  const last = lastLine(dataDir, 'demo ready');
  if (last === undefined) throw new Error('the API has not said that the demo company is ready');
  return Ready.parse(JSON.parse(last)).signIns;
}

function lastLine(dataDir: string, message: string): string | undefined {
  return readFileSync(path.join(dataDir, 'data', 'api.log'), 'utf8').split('\n').findLast((line) => line.includes(`"msg":"${message}"`));
}

/** The token of the one-time link of an empty service, which is told just after it has become ready. */
export async function setUpToken(dataDir: string): Promise<string> {
  for (const end = Date.now() + 20_000; Date.now() < end; await pause(50)) {
    const line = lastLine(dataDir, 'set-up link');
    if (line !== undefined) return z.object({ url: z.string() }).parse(JSON.parse(line)).url.split(/[#/]/).at(-1) ?? '';
  }
  throw new Error('the API has not offered a set-up link');
}

export function signInOf(dataDir: string, role: string): SignIn {
  const found = demoSignIns(dataDir).find((signIn) => signIn.role === role);
  if (found === undefined) throw new Error(`the demo company has no ${role}`);
  return found;
}
