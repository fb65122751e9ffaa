import type { DesignDocument, PlanShape, PlanUse, Position } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { useState, type KeyboardEvent } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { freeId } from '../model/defaults.ts';
import { isDrawing, leastPoints, usesOf, type Hand } from '../model/plan/hand.ts';
import { addShape, emptyPlan } from '../model/plan/operations.ts';

export type Pen = ReturnType<typeof usePen>;

/** What the hand on the plan is at: which tool, what it draws, the corners so far, the chosen shape. */
export function usePen(document: DesignDocument, edit: (operations: readonly DraftOperation[]) => void) {
  const { t } = useText();
  const plan = document.site.plan ?? emptyPlan;
  const [hand, setHand] = useState<Hand>('choose');
  const [use, setUse] = useState<PlanUse>('house');
  const [path, setPath] = useState<readonly Position[]>([]);
  const [chosen, choose] = useState<string | null>(null);

  const take = (next: Hand) => {
    setHand(next);
    setPath([]);
    if (isDrawing(next) && !usesOf[next].includes(use)) setUse(usesOf[next][0] ?? use);
    if (next !== 'choose') choose(null);
  };
  const finish = (points: readonly Position[], kind: PlanShape['kind']) => {
    if (points.length < leastPoints[kind]) return;
    const id = freeId(plan.shapes, 'Z');
    const name = t('plan.numbered', { use: t(`plan.use.${use}`), number: plan.shapes.filter((shape) => shape.use === use).length + 1 });
    edit(addShape(document, { id, name, kind, use, points, of: null }));
    take('choose');
    choose(id);
  };
  const place = (at: Position) => {
    const [first] = path;
    const closes = hand === 'area' && first !== undefined && path.length > 2 && first.x === at.x && first.y === at.y;
    if (hand === 'place') finish([at], 'place');
    else if (closes) finish(path, 'area');
    else setPath(hand === 'tie' ? [...path.slice(-1), at] : hand === 'spot' ? [at] : [...path, at]);
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') setPath(path.slice(0, -1));
    if (event.key !== 'Enter' || !isDrawing(hand) || path.length === 0) return;
    event.preventDefault();
    finish(path, hand);
  };
  return {
    plan, hand, use, path, take, setUse, setPath, choose, finish, place, onKey,
    selected: plan.shapes.find(({ id }) => id === chosen) ?? null,
    /** A picture lies below whose length is not known: nothing can be measured on it. */
    untied: plan.picture !== null && plan.picture.tie === null,
  };
}
