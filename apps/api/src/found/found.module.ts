import { Module } from '@nestjs/common';
import { FoundController } from './found.controller.ts';
import { FoundService } from './found.service.ts';

@Module({ controllers: [FoundController], providers: [FoundService] })
export class FoundModule {}
