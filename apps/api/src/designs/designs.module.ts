import { Module } from '@nestjs/common';
import { CompanyModule } from '../company/company.module.ts';
import { EvaluateModule } from '../evaluate/evaluate.module.ts';
import { DesignsController } from './designs.controller.ts';
import { DesignsService } from './designs.service.ts';
import { DraftsService } from './drafts.service.ts';
import { EditsService } from './edits.service.ts';
import { Evaluator } from './evaluator.ts';
import { IssueService } from './issue.service.ts';
import { PresenceService } from './presence.service.ts';
import { PrintService } from './print/print.service.ts';

@Module({ imports: [CompanyModule, EvaluateModule], controllers: [DesignsController], providers: [DesignsService, DraftsService, EditsService, IssueService, PrintService, PresenceService, Evaluator], exports: [DesignsService, DraftsService, IssueService] })
export class DesignsModule {}
