import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { CookieSerializeOptions } from '@fastify/cookie';
import type { Asker } from '../store/asker.ts';
import type { KeyRow } from '../store/keys.ts';
import type { Store } from '../store/open-store.ts';

export const KEY_COOKIE = 'plyhue_key';

/** No script reads it, no other site sends it, and it lasts for a year. On a home network there is no https. */
export const KEY_MANNERS: CookieSerializeOptions = {
  path: '/',
  httpOnly: true,
  sameSite: 'strict',
  maxAge: 365 * 24 * 3600,
};

/** 192 bits of chance; whoever guesses has other worries. */
export function newSecret(): string {
  return randomBytes(24).toString('base64url');
}

/** Long random words need no slow hash. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

export function cookieOf({ id }: Pick<KeyRow, 'id'>, secret: string): string {
  return `${id}.${secret}`;
}

/** Who holds the key that a cookie shows; null when it is none, or taken away. */
export async function keyHolder(store: Store, cookie: string | undefined): Promise<Asker | null> {
  const [id, secret, ...more] = cookie?.split('.') ?? [];
  if (id === undefined || secret === undefined || more.length > 0) return null;
  const key = await store.read.keys.at(id);
  if (key === null) return null;
  const [shown, kept] = [Buffer.from(hashOf(secret)), Buffer.from(key.hash)];
  return timingSafeEqual(shown, kept) ? { person: key.person, pad: key.pad } : null;
}
