import { type DynamicModule, Global, Module } from '@nestjs/common';
import { AuditModule } from './audit/audit.module.ts';
import { ChecklistsModule } from './checklists/checklists.module.ts';
import { Clock } from './common/clock.ts';
import { CommonModule } from './common/common.module.ts';
import { LOG, type Log } from './common/log.ts';
import { CompanyModule } from './company/company.module.ts';
import { DesignsModule } from './designs/designs.module.ts';
import { ENV, type Env } from './env.ts';
import { EvaluateModule } from './evaluate/evaluate.module.ts';
import { DayworkModule } from './daywork/daywork.module.ts';
import { FoundModule } from './found/found.module.ts';
import { HandoverModule } from './handover/handover.module.ts';
import { IdentityModule } from './identity/identity.module.ts';
import { JobsModule } from './jobs/jobs.module.ts';
import { LibraryModule } from './library/library.module.ts';
import { LocatesModule } from './locates/locates.module.ts';
import { NoticesModule } from './notices/notices.module.ts';
import { OffersModule } from './offers/offers.module.ts';
import { PermitsModule } from './permits/permits.module.ts';
import { PhotosModule } from './photos/photos.module.ts';
import { PortalModule } from './portal/portal.module.ts';
import { PricesModule } from './prices/prices.module.ts';
import { ProofModule } from './proof/proof.module.ts';
import { RainModule } from './rain/rain.module.ts';
import { SendingModule } from './sending/sending.module.ts';
import { ServiceModule } from './service/service.module.ts';
import { StudiesModule } from './studies/studies.module.ts';
import { SurveysModule } from './surveys/surveys.module.ts';

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
const features = [
  ServiceModule, IdentityModule, CompanyModule, AuditModule, NoticesModule, EvaluateModule,
  JobsModule, SurveysModule, RainModule, DesignsModule, LibraryModule, StudiesModule, PricesModule, OffersModule, PermitsModule, PhotosModule, ChecklistsModule, LocatesModule, FoundModule, DayworkModule, ProofModule, HandoverModule,
  PortalModule, SendingModule,
];

@Module({})
export class AppModule {
  static of(surroundings: Surroundings): DynamicModule {
    return { module: AppModule, imports: [SurroundingsModule.of(surroundings), CommonModule, ...features] };
  }
}
