import { Module } from '@nestjs/common';
import { ReadinessService } from './readiness.ts';
import { ServiceController } from './service.controller.ts';

@Module({ controllers: [ServiceController], providers: [ReadinessService] })
export class ServiceModule {}
