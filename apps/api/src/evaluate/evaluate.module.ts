import { Module } from '@nestjs/common';
import { EvaluateController } from './evaluate.controller.ts';
import { EvaluateService } from './evaluate.service.ts';
import { EvaluationPool } from './evaluation.pool.ts';

@Module({ controllers: [EvaluateController], providers: [EvaluateService, EvaluationPool], exports: [EvaluationPool] })
export class EvaluateModule {}
