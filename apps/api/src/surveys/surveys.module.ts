import { Module } from '@nestjs/common';
import { SurveyFactsController } from './facts.controller.ts';
import { SurveyFactsService } from './facts.service.ts';
import { SurveysController } from './surveys.controller.ts';
import { SurveysService } from './surveys.service.ts';

@Module({ controllers: [SurveysController, SurveyFactsController], providers: [SurveysService, SurveyFactsService], exports: [SurveysService] })
export class SurveysModule {}
