import { hash, verify } from '@node-rs/argon2';

/** argon2id, the library's default: 19 MiB, two passes, one lane, the least that OWASP's password storage cheat sheet gives. */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export function hashPassword(password: string): Promise<string> {
  return hash(password, cost);
}

let decoy: Promise<string> | undefined;

/** Takes as long for an e-mail that nobody has, so that time tells nothing. */
export async function checkPassword(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('nobody has this password');
  const matches = await verify(stored ?? (await decoy), password);
  return matches && stored !== null;
}
