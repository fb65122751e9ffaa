import { Module } from '@nestjs/common';
import { RainController } from './rain.controller.ts';
import { RainService } from './rain.service.ts';

@Module({ controllers: [RainController], providers: [RainService], exports: [RainService] })
export class RainModule {}
