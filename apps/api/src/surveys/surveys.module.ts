import { Module } from '@nestjs/common';
import { SurveysController } from './surveys.controller.ts';
import { SurveysService } from './surveys.service.ts';

@Module({ controllers: [SurveysController], providers: [SurveysService], exports: [SurveysService] })
export class SurveysModule {}
