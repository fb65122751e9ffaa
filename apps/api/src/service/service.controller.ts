import { Controller } from '@nestjs/common';
import { service as api } from '@yardfall/contracts';
import { DomainError } from '../common/errors.ts';
import { Route } from '../common/route.ts';
import { buildOpenApi } from '../openapi/document.ts';
import { referencePage, referenceStyle } from '../openapi/page.ts';
import { ReadinessService } from './readiness.ts';

@Controller()
export class ServiceController {
  private readonly readiness: ReadinessService;
  private document: string | null = null;
  private page: string | null = null;

  constructor(readiness: ReadinessService) {
    this.readiness = readiness;
  }

  @Route(api.health)
  health() {
    return { ok: true as const };
  }

  @Route(api.ready)
  async ready() {
    const state = await this.readiness.check();
    if (!state.ready) throw new DomainError('busy', { database: state.database.code, migrations: state.migrations.code, role: state.role.code });
    return state;
  }

  @Route(api.openapi)
  openapi(): string {
    this.document ??= JSON.stringify(buildOpenApi());
    return this.document;
  }

  @Route(api.reference)
  reference(): string {
    this.page ??= referencePage();
    return this.page;
  }

  @Route(api.referenceStyle)
  referenceStyle(): string {
    return referenceStyle;
  }
}
