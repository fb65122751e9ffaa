import { Module } from '@nestjs/common';
import { PermitsController } from './permits.controller.ts';
import { PermitsService } from './permits.service.ts';

@Module({ controllers: [PermitsController], providers: [PermitsService] })
export class PermitsModule {}
