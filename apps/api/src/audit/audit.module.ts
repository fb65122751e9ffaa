import { Module } from '@nestjs/common';
import { AuditController } from './audit.controller.ts';
import { AuditService } from './audit.service.ts';
import { SealService } from './seal.service.ts';

@Module({ controllers: [AuditController], providers: [AuditService, SealService], exports: [SealService] })
export class AuditModule {}
