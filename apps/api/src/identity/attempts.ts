import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { Database } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';

const minutes = 60;

/** Wrong passwords are counted in Postgres, so that every instance knows: 10 for an e-mail from one address, 100 for the address, a quarter of an hour. */
@Injectable()
export class Attempts {
  private readonly perAccount: RateLimiterPostgres;
  private readonly perAddress: RateLimiterPostgres;

  constructor(@Inject(Database) database: Database) {
    const store = { storeClient: database.pool, storeType: 'pool', tableName: 'rate_limit', tableCreated: true, clearExpiredByTimeout: false };
    this.perAccount = new RateLimiterPostgres({ ...store, keyPrefix: 'account', points: 10, duration: 15 * minutes });
    this.perAddress = new RateLimiterPostgres({ ...store, keyPrefix: 'address', points: 100, duration: 15 * minutes });
  }

  /** Counts before the password is tried; a right one gives the account's counter back. */
  async count(email: string, ip: string): Promise<void> {
    await take(this.perAddress, digest(ip));
    await take(this.perAccount, accountKey(email, ip));
  }

  async forget(email: string, ip: string): Promise<void> {
    await this.perAccount.delete(accountKey(email, ip));
  }
}

/** No e-mail address stands in the table. */
function digest(value: string): string {
  return createHash('sha256').update(value).digest('hex').slice(0, 40);
}

function accountKey(email: string, ip: string): string {
  return digest(`${email}\n${ip}`);
}

async function take(limiter: RateLimiterPostgres, key: string): Promise<void> {
  try {
    await limiter.consume(key);
  } catch (error) {
    if (error instanceof RateLimiterRes) throw new DomainError('auth.tooManyAttempts', { retryAfter: Math.ceil(error.msBeforeNext / 1000) });
    throw error;
  }
}
