import { Module } from '@nestjs/common';
import { LibraryModule } from '../library/library.module.ts';
import { PricesModule } from '../prices/prices.module.ts';
import { RecordsService } from './records.service.ts';
import { StudyRunner } from './runner.service.ts';
import { StudiesController } from './studies.controller.ts';
import { StudiesService } from './studies.service.ts';
import { StudyPool } from './study.pool.ts';

@Module({ imports: [LibraryModule, PricesModule], controllers: [StudiesController], providers: [StudiesService, RecordsService, StudyRunner, StudyPool] })
export class StudiesModule {}
