import { expect, test } from 'vitest';
import type { LocateTicket, TicketEventKind } from '@yardfall/contracts';
import { mayHappen } from './events.ts';

const events = (...kinds: TicketEventKind[]): Pick<LocateTicket, 'events'> => ({
  events: kinds.map((kind, hour) => ({ id: String(hour), kind, utility: '', hazard: false, note: '', photoId: null, at: `2026-03-02T0${hour}:00:00Z`, recordedAt: `2026-03-02T0${hour}:00:00Z`, by: 'Ana' })),
});

test('what ends a stop is offered while it lasts', () => {
  expect(mayHappen(events())).toEqual(['marksDestroyed', 'markError', 'damage', 'areaEnlarged']);
  expect(mayHappen(events('marksDestroyed'))).toEqual(['remarked', 'remarkRequested', 'markError', 'damage', 'areaEnlarged']);
  expect(mayHappen(events('marksDestroyed', 'remarked', 'damage'))).toEqual(['damageCleared', 'marksDestroyed', 'markError', 'areaEnlarged']);
  expect(mayHappen(events('areaEnlarged'))).toEqual(['marksDestroyed', 'markError', 'damage']);
});
