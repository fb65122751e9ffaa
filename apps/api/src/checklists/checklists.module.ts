import { Global, Module } from '@nestjs/common';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { ChecklistBuilderService } from './builder.service.ts';
import { EvaluateModule } from '../evaluate/evaluate.module.ts';
import { AsBuiltService } from './asBuilt.service.ts';
import { ChecklistsController } from './checklists.controller.ts';
import { ChecklistsService } from './checklists.service.ts';
import { FactsService } from './facts.service.ts';
import { RejudgeService } from './rejudge.service.ts';

/** Global, because a release (jobs) starts the building of a checklist and this feature knows jobs. */
@Global()
@Module({
  imports: [EvaluateModule],
  controllers: [ChecklistsController],
  providers: [AsBuiltService, ChecklistsService, FactsService, RejudgeService, { provide: ChecklistBuilder, useClass: ChecklistBuilderService }],
  exports: [ChecklistsService, ChecklistBuilder],
})
export class ChecklistsModule {}
