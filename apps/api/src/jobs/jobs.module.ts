import { Module } from '@nestjs/common';
import { CustomersModule } from '../customers/customers.module.ts';
import { JobsController } from './jobs.controller.ts';
import { JobsService } from './jobs.service.ts';
import { ReferralService } from './referral.service.ts';
import { ReleaseService } from './release.service.ts';

/** The builder of checklists is provided by its own feature, which is global for that reason. */
@Module({ imports: [CustomersModule], controllers: [JobsController], providers: [JobsService, ReleaseService, ReferralService], exports: [JobsService] })
export class JobsModule {}
