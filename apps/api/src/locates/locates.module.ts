import { Module } from '@nestjs/common';
import { GasRulesController } from './gasRules.controller.ts';
import { GasRulesService } from './gasRules.service.ts';
import { LocateClockService } from './locateClock.service.ts';
import { LocatesController } from './locates.controller.ts';
import { LocatesService } from './locates.service.ts';
import { PrivateLinesController } from './privateLines.controller.ts';
import { PrivateLinesService } from './privateLines.service.ts';
import { RuleSetsController } from './ruleSets.controller.ts';
import { RuleSetsService } from './ruleSets.service.ts';
import { TicketLifeService } from './ticketLife.service.ts';

@Module({ controllers: [LocatesController, RuleSetsController, GasRulesController, PrivateLinesController], providers: [LocatesService, TicketLifeService, RuleSetsService, GasRulesService, PrivateLinesService, LocateClockService], exports: [LocatesService, TicketLifeService] })
export class LocatesModule {}
