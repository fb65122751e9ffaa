import { Module } from '@nestjs/common';
import { PriceListService } from './price-list.service.ts';
import { PricesController } from './prices.controller.ts';
import { SheetsService } from './sheets.service.ts';

@Module({ controllers: [PricesController], providers: [PriceListService, SheetsService], exports: [PriceListService, SheetsService] })
export class PricesModule {}
