import { Injectable } from '@nestjs/common';
import { asBuiltDocument, CalcProblem, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { type AsBuilt, type Built, builtFrom, canonicalBytes, sha256Hex } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Database } from '../common/database.ts';
import { EvaluationPool } from '../evaluate/evaluation.pool.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { type BuildRevision, buildRevisionOf } from './build.ts';
import { type LiveChecklist, loadChecklist } from './live.ts';

/** The design with the levels that the crew has shot, evaluated like the design itself; nothing of it is stored before the handover. */
@Injectable()
export class AsBuiltService {
  private readonly database: Database;
  private readonly pool: EvaluationPool;

  constructor(database: Database, pool: EvaluationPool) {
    this.database = database;
    this.pool = pool;
  }

  async read(actor: Actor, jobId: string): Promise<AsBuilt> {
    const { revision, built } = await this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      const build = await buildRevisionOf(tx, actor, job);
      return { revision: build, built: shotSoFar(build, await loadChecklist(tx, actor, jobId)) };
    });
    const designed = await this.pool.evaluate(revision.document, 'answer');
    const document = documentOf(revision, built);
    const outcome = document instanceof CalcProblem ? document : await this.evaluated(document);
    return {
      revisionId: revision.id, calcVersion: designed.calcVersion, levels: [...built.levels], pipes: built.pipes.map(({ part, shots }) => ({ part, shots: [...shots] })),
      documentSha256: await sha256Hex(canonicalBytes(document instanceof CalcProblem ? revision.document : document)),
      ...(outcome instanceof CalcProblem
        ? { resultsSha256: null, problem: { code: outcome.code, path: outcome.path, params: outcome.params }, freeboards: [] }
        : { resultsSha256: await sha256Hex(canonicalBytes(outcome)), problem: null, freeboards: beside(revision.document, designed, outcome) }),
    };
  }

  private async evaluated(document: DesignDocument): Promise<Evaluation | CalcProblem> {
    try {
      return await this.pool.evaluate(document, 'answer');
    } catch (error) {
      if (error instanceof CalcProblem) return error;
      throw error;
    }
  }
}

function shotSoFar({ document }: BuildRevision, live: LiveChecklist): Built {
  const items = [...live.items.values()].map(({ row, facts }) => ({
    part: row.part, facts: facts.filter(({ fact, verdict }) => verdict === 'kept' && fact.requirementHash === row.requirementHash).map(({ fact }) => fact),
  }));
  return builtFrom(document, items);
}

function documentOf({ document }: BuildRevision, { levels, pipes }: Built): DesignDocument | CalcProblem {
  try {
    return asBuiltDocument(document, levels, pipes);
  } catch (error) {
    if (error instanceof CalcProblem) return error;
    throw error;
  }
}

/** Only the storm that the design answers for. */
function beside({ rain }: DesignDocument, designed: Evaluation, built: Evaluation): AsBuilt['freeboards'] {
  return built.results.freeboards.flatMap(({ sill, returnPeriod, onTwin }) => {
    const before = designed.results.freeboards.find((one) => one.sill === sill && one.returnPeriod === returnPeriod);
    return before === undefined || returnPeriod !== rain.designReturnPeriod ? [] : [{ sill, returnPeriod, designed: before.onTwin, built: onTwin }];
  });
}
