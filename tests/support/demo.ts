import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

/** How to get in as one person of the demo company: members with a password, the customer by a link. */
export const SignIn = z.object({ role: z.string(), email: z.string().optional(), password: z.string().optional(), link: z.string().optional() });
export type SignIn = z.infer<typeof SignIn>;

const Line = z.object({ msg: z.literal('demo ready'), signIns: z.array(SignIn).min(1) });

/** What the API itself said when the demo company was ready. */
export function demoSignIns(dataDir: string): SignIn[] {
  const lines = readFileSync(path.join(dataDir, 'data', 'api.log'), 'utf8').split('\n').filter((line) => line.includes('"demo ready"'));
  const last = lines.at(-1);
  if (last === undefined) throw new Error('the API has not said that the demo company is ready');
  return Line.parse(JSON.parse(last)).signIns;
}

export function signInOf(dataDir: string, role: string): SignIn {
  const found = demoSignIns(dataDir).find((signIn) => signIn.role === role);
  if (found === undefined) throw new Error(`the demo company has no ${role}`);
  return found;
}
