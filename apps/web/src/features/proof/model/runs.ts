import type { Basin, CurveSample, DesignDocument, Pump } from '@yardfall/calc';
import type { BodyInput, proof } from '@yardfall/contracts';

export type Run = BodyInput<typeof proof.record>['runs'][number];
/** A run while it is typed. */
export type TypedRun = { readonly [K in Exclude<keyof Run, 'emptyLine'>]: number | null } & { readonly emptyLine: boolean };

/** Three runs between the marks at which the pump is to start and stop. */
export function emptyRuns(basin: Basin | null): readonly TypedRun[] {
  const run: TypedRun = { upperLevel: basin?.onLevel ?? null, lowerLevel: basin?.offLevel ?? null, volume: null, seconds: null, emptyLine: false };
  return [run, run, run];
}

/** A change of marks or volume goes on to the runs below that still say the same as this one did. */
export function withRun(runs: readonly TypedRun[], index: number, change: Partial<TypedRun>): readonly TypedRun[] {
  const before = runs[index];
  return runs.map((run, at) => {
    if (at === index) return { ...run, ...change };
    if (at < index || before === undefined) return run;
    const carried = (['upperLevel', 'lowerLevel', 'volume'] as const).filter((key) => key in change && run[key] === before[key]);
    return { ...run, ...Object.fromEntries(carried.map((key) => [key, change[key] ?? null])) };
  });
}

/** The runs that are filled in; null while one is only half filled in or its marks stand upside down. */
export function finishedRuns(runs: readonly TypedRun[]): Run[] | null {
  const started = runs.filter(({ seconds }, index) => index === 0 || seconds !== null);
  const whole = started.flatMap(({ upperLevel, lowerLevel, volume, seconds, emptyLine }) =>
    upperLevel === null || lowerLevel === null || volume === null || seconds === null || volume <= 0 || seconds <= 0 || upperLevel <= lowerLevel ? [] : [{ upperLevel, lowerLevel, volume, seconds, emptyLine }]);
  return whole.length === started.length ? whole : null;
}

export function pumpsIn(document: DesignDocument | null): readonly Pump[] {
  return (document?.system.parts ?? []).filter((part) => part.kind === 'pump');
}

export function basinOf(document: DesignDocument | null, pump: Pump | undefined): Basin | null {
  return document?.system.parts.find((part): part is Basin => part.kind === 'basin' && part.id === pump?.basin) ?? null;
}

/** What a plain round basin holds between two levels [m3]; the pump and its stand take some of it away. */
export function cylinder({ diameter }: Basin, upper: number, lower: number): number {
  return (Math.PI / 4) * diameter * diameter * (upper - lower);
}

/** Head [m] on a curve of rising flow; null outside it. */
export function headAt(curve: readonly CurveSample[], flow: number): number | null {
  const after = curve.findIndex((sample) => sample.flow >= flow);
  const [a, b] = [curve[after - 1], curve[after]];
  if (!a || !b || b.flow === a.flow) return b?.flow === flow ? b.head : null;
  return a.head + ((flow - a.flow) / (b.flow - a.flow)) * (b.head - a.head);
}
