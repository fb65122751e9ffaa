import { Global, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR, DiscoveryModule } from '@nestjs/core';
import { AccessGuard } from './access.guard.ts';
import { Database } from './database.ts';
import { Housekeeping } from './housekeeping.ts';
import { Owner } from './owner.ts';
import { ProblemFilter } from './problem.filter.ts';
import { RouteInterceptor } from './route.interceptor.ts';
import { Worker } from './worker.ts';

@Global()
@Module({
  imports: [DiscoveryModule],
  providers: [
    Database, Owner, Worker, Housekeeping,
    { provide: APP_GUARD, useClass: AccessGuard },
    { provide: APP_INTERCEPTOR, useClass: RouteInterceptor },
    { provide: APP_FILTER, useClass: ProblemFilter },
  ],
  exports: [Database, Owner, Worker, Housekeeping],
})
export class CommonModule {}
