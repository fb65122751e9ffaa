import { Module } from '@nestjs/common';
import { LocateClockService } from './locateClock.service.ts';
import { LocatesController } from './locates.controller.ts';
import { LocatesService } from './locates.service.ts';
import { PrivateLinesController } from './privateLines.controller.ts';
import { PrivateLinesService } from './privateLines.service.ts';
import { RuleSetsController } from './ruleSets.controller.ts';
import { RuleSetsService } from './ruleSets.service.ts';
import { TicketLifeService } from './ticketLife.service.ts';

@Module({ controllers: [LocatesController, RuleSetsController, PrivateLinesController], providers: [LocatesService, TicketLifeService, RuleSetsService, PrivateLinesService, LocateClockService], exports: [LocatesService, TicketLifeService] })
export class LocatesModule {}
