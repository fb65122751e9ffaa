import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

/**
 * AES-256-GCM with a random 96-bit nonce. A sealed value is: format (1 byte), nonce (12), tag (16), ciphertext.
 * `place` is authenticated with it, so a value that was moved to another row or field does not open.
 */
export type Bytes = Uint8Array<ArrayBuffer>;

const format = 1;
const nonceLength = 12;
const tagLength = 16;

export function makeDataKey(): Bytes {
  return new Uint8Array(randomBytes(32));
}

export function seal(key: Uint8Array, place: string, plain: Uint8Array): Bytes {
  const nonce = randomBytes(nonceLength);
  const cipher = createCipheriv('aes-256-gcm', key, nonce, { authTagLength: tagLength });
  cipher.setAAD(Buffer.from(place, 'utf8'));
  const body = Buffer.concat([cipher.update(plain), cipher.final()]);
  return new Uint8Array(Buffer.concat([Buffer.of(format), nonce, cipher.getAuthTag(), body]));
}

/** Throws when the key, the place or a single bit is another one. */
export function open(key: Uint8Array, place: string, sealed: Uint8Array): Bytes {
  if (sealed[0] !== format || sealed.length < 1 + nonceLength + tagLength) throw new Error(`the sealed value of ${place} has an unknown format`);
  const nonce = sealed.subarray(1, 1 + nonceLength);
  const decipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: tagLength });
  decipher.setAAD(Buffer.from(place, 'utf8'));
  decipher.setAuthTag(sealed.subarray(1 + nonceLength, 1 + nonceLength + tagLength));
  return new Uint8Array(Buffer.concat([decipher.update(sealed.subarray(1 + nonceLength + tagLength)), decipher.final()]));
}

export function sealJson(key: Uint8Array, place: string, value: unknown): Bytes {
  return seal(key, place, Buffer.from(JSON.stringify(value), 'utf8'));
}

export function openJson(key: Uint8Array, place: string, sealed: Uint8Array): unknown {
  return JSON.parse(Buffer.from(open(key, place, sealed)).toString('utf8'));
}
