import { Module } from '@nestjs/common';
import { LocateClockService } from './locateClock.service.ts';
import { LocatesController } from './locates.controller.ts';
import { LocatesService } from './locates.service.ts';

@Module({ controllers: [LocatesController], providers: [LocatesService, LocateClockService], exports: [LocatesService] })
export class LocatesModule {}
