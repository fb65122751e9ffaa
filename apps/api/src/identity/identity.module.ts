import { Module } from '@nestjs/common';
import { CompanyModule } from '../company/company.module.ts';
import { Attempts } from './attempts.ts';
import { SessionController } from './session.controller.ts';
import { SessionsService } from './sessions.service.ts';
import { SetUpService } from './setUp.service.ts';

@Module({ imports: [CompanyModule], controllers: [SessionController], providers: [Attempts, SessionsService, SetUpService], exports: [SessionsService, SetUpService] })
export class IdentityModule {}
