import { Module } from '@nestjs/common';
import { CompanyController } from './company.controller.ts';
import { CompanyService } from './company.service.ts';

@Module({ controllers: [CompanyController], providers: [CompanyService], exports: [CompanyService] })
export class CompanyModule {}
