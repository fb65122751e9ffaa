import { Module } from '@nestjs/common';
import { DesignsModule } from '../designs/designs.module.ts';
import { FoundController } from './found.controller.ts';
import { FoundService } from './found.service.ts';
import { ReportsService } from './reports.service.ts';

@Module({ imports: [DesignsModule], controllers: [FoundController], providers: [FoundService, ReportsService] })
export class FoundModule {}
