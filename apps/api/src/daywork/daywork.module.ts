import { Module } from '@nestjs/common';
import { DayworkController } from './daywork.controller.ts';
import { DayworkService } from './daywork.service.ts';

@Module({ controllers: [DayworkController], providers: [DayworkService] })
export class DayworkModule {}
