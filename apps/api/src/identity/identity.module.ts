import { Module } from '@nestjs/common';
import { CompanyModule } from '../company/company.module.ts';
import { Attempts } from './attempts.ts';
import { DevicesService } from './devices.service.ts';
import { IdentityController } from './identity.controller.ts';
import { LinksService } from './links.service.ts';
import { MembersService } from './members.service.ts';
import { SessionController } from './session.controller.ts';
import { SessionsService } from './sessions.service.ts';
import { SetUpService } from './setUp.service.ts';

@Module({
  imports: [CompanyModule],
  controllers: [SessionController, IdentityController],
  providers: [Attempts, SessionsService, SetUpService, MembersService, LinksService, DevicesService],
  exports: [SessionsService, SetUpService, LinksService],
})
export class IdentityModule {}
