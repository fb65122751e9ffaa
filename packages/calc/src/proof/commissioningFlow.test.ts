import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE } from '../common/constants.ts';
import type { DesignDocument } from '../document/document.ts';
import { hazenWilliamsSlope } from '../pump/hazenWilliams.ts';
import { headAtFlow, pumpCurve } from '../pump/pumpCurve.ts';
import { commissioningFlow } from './commissioningFlow.ts';

const file = new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const document = JSON.parse(readFileSync(file, 'utf8')) as DesignDocument;
const off = 96.5 * FOOT;

describe('commissioning flow of the demo site', () => {
  it('is where curve and line with new pipe agree, less the weep hole', () => {
    const { duty, weepFlow, netFlow } = commissioningFlow(document, 'M1', off);
    const pump = document.system.parts.find((part) => part.kind === 'pump');
    const line = document.system.parts.find((part) => part.kind === 'dischargeLine');
    const outlet = document.system.parts.find((part) => part.kind === 'outlet' && part.id === 'O1');
    if (pump?.kind !== 'pump' || line?.kind !== 'dischargeLine' || outlet?.kind !== 'outlet') throw new Error('no pump line');
    const valve = document.system.parts.find((part) => part.kind === 'checkValve');
    const fittings = line.fittings.reduce((sum, { count, equivalentLength }) => sum + count * equivalentLength, 0);
    const length = line.length + fittings + (valve?.kind === 'checkValve' ? valve.equivalentLength : 0);
    const asked = Math.max(outlet.waterLevel, outlet.level) - off + outlet.openingHead + length * hazenWilliamsSlope(duty.flow, line.innerDiameter, 150);
    expect(duty.head).toBeCloseTo(asked, 6);
    expect(duty.head).toBeCloseTo(headAtFlow(pumpCurve(pump.curve), duty.flow), 9);
    expect(netFlow).toBeCloseTo(duty.flow - weepFlow, 12);
  });

  it('is a little more than the design flow of about 30 gpm, and more when the basin stands higher', () => {
    const low = commissioningFlow(document, 'M1', off).duty.flow / GALLON_PER_MINUTE;
    expect(low).toBeGreaterThan(30);
    expect(low).toBeLessThan(33);
    expect(commissioningFlow(document, 'M1', off + 0.3).duty.flow / GALLON_PER_MINUTE).toBeGreaterThan(low);
  });

  it('names a pump that is not there', () => {
    expect(() => commissioningFlow(document, 'M9', off)).toThrow('proof.noPump at pump');
  });
});
