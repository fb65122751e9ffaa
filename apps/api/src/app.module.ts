import { type DynamicModule, Global, Module } from '@nestjs/common';
import { AuditModule } from './audit/audit.module.ts';
import { Clock } from './common/clock.ts';
import { CommonModule } from './common/common.module.ts';
import { LOG, type Log } from './common/log.ts';
import { CompanyModule } from './company/company.module.ts';
import { ENV, type Env } from './env.ts';
import { IdentityModule } from './identity/identity.module.ts';
import { NoticesModule } from './notices/notices.module.ts';
import { ServiceModule } from './service/service.module.ts';

export interface Surroundings {
  readonly env: Env;
  readonly log: Log;
  readonly clock: Clock;
}

@Global()
@Module({})
class SurroundingsModule {
  static of({ env, log, clock }: Surroundings): DynamicModule {
    const providers = [{ provide: ENV, useValue: env }, { provide: LOG, useValue: log }, { provide: Clock, useValue: clock }];
    return { module: SurroundingsModule, providers, exports: [ENV, LOG, Clock] };
  }
}

/** Every feature of the service; a new one is added to this list. */
const features = [ServiceModule, IdentityModule, CompanyModule, AuditModule, NoticesModule];

@Module({})
export class AppModule {
  static of(surroundings: Surroundings): DynamicModule {
    return { module: AppModule, imports: [SurroundingsModule.of(surroundings), CommonModule, ...features] };
  }
}
