import { identity, jobs } from '@yardfall/contracts';
import { call } from './api.ts';
import { read } from './query.ts';

// Compiled by the type check only: what may be left out and what may not.
export async function accepted(): Promise<string> {
  await call(identity.me);
  await call(jobs.list, { query: { open: 'true' } });
  read(jobs.list);
  read(jobs.read, { params: { jobId: '0' } });
  const { data } = await call(jobs.read, { params: { jobId: '0' } });
  return data.title;
}

export function refused(): void {
  // @ts-expect-error a job is read by its id
  void call(jobs.read);
  // @ts-expect-error signing in needs both fields
  void call(identity.signIn, { body: { email: 'a@b.example' } });
  // @ts-expect-error the same when read
  read(jobs.read);
}
