import { Controller } from '@nestjs/common';
import { type InputOf, prices as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { PriceListService } from './price-list.service.ts';
import { SheetsService } from './sheets.service.ts';

@Controller()
export class PricesController {
  private readonly priceList: PriceListService;
  private readonly sheets: SheetsService;

  constructor(priceList: PriceListService, sheets: SheetsService) {
    this.priceList = priceList;
    this.sheets = sheets;
  }

  @Route(api.items)
  items(@Who() actor: Actor) {
    return this.priceList.list(actor);
  }

  @Route(api.saveItem)
  saveItem(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.saveItem>) {
    return this.priceList.save(actor, params.code, body);
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.sheets.ofJob(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.sheets.create(actor, params.jobId, body);
  }

  @Route(api.replace)
  replace(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.replace>) {
    return this.sheets.replace(actor, params.jobId, params.sheetId, body);
  }
}
