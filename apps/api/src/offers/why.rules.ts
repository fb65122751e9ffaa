import { PUMP_DOWN_LIMITS, type DesignDocument, type Evaluation, type FamilyCase, type FamilyMember, type Freeboard, type Sill } from '@yardfall/calc';

export interface CodedText {
  readonly code: string;
  readonly params: Record<string, string | number>;
}

const text = (code: string, params: CodedText['params'] = {}): CodedText => ({ code: `portal.why.${code}`, params });
/** Routing tells how long water stood in minutes; texts are told in SI. */
const seconds = (minutes: number) => minutes * 60;

/** The door that is nearest to getting wet in the storm that was planned for. */
export function worstFreeboard(document: DesignDocument, evaluation: Evaluation): Freeboard | null {
  const planned = document.rain.designReturnPeriod;
  const ofStorm = evaluation.results.freeboards.filter((one) => one.returnPeriod === planned);
  return ofStorm.reduce<Freeboard | null>((worst, one) => (worst === null || one.lower < worst.lower ? one : worst), null);
}

/** Why it is built this way, from the live numbers of a frozen design: every figure is a parameter in SI. */
export function whyTexts(document: DesignDocument, evaluation: Evaluation, responsibleName: string): CodedText[] {
  const freeboard = worstFreeboard(document, evaluation);
  return [
    ...(freeboard === null ? [] : nowTexts(freeboard)),
    ...planTexts(document, evaluation),
    ...stormTexts(document.rain.designReturnPeriod),
    ...(freeboard === null ? [] : heightTexts(freeboard)),
    ...stillIn(document, evaluation),
    ...(freeboard === null ? [] : whatIfs(document, evaluation, freeboard)),
    ...measured(document, evaluation),
    ...guessed(document),
    text('ifWeFind'), text('noDry'), promise(evaluation),
    ...(responsibleName === '' ? [] : [text('answers', { name: responsibleName })]),
    text('ownCalculation'),
  ];
}

function nowTexts({ withoutSystem, minutesOverSillWithoutSystem }: Freeboard): CodedText[] {
  return withoutSystem < 0 ? [text('now.over', { minutes: seconds(minutesOverSillWithoutSystem) })] : [text('now.below', { height: withoutSystem })];
}

function planTexts(document: DesignDocument, evaluation: Evaluation): CodedText[] {
  const has = (kind: string) => document.system.parts.some((part) => part.kind === kind);
  const roof = has('roofLine') ? [text('roofAway')] : [];
  if (!has('pump')) return has('pipe') || has('channel') ? [...roof, text('byItself')] : roof;
  const gravity = evaluation.results.gravity;
  const shortfall = gravity.length === 0 ? null : Math.min(...gravity.map((answer) => answer.shortfallWithMargin));
  return [...(shortfall !== null && shortfall > 0 ? [text('tooHigh', { shortfall })] : []), ...roof, text(has('roofLine') ? 'pumpRest' : 'pump')];
}

/** 1 - (1 - 1/T)^10, told as "1 in n" while it is less than even, else as so many in ten. */
function stormTexts(years: number): CodedText[] {
  const chance = 1 - (1 - 1 / years) ** 10;
  const decade = chance < 0.5 ? text('tenYearsOneIn', { n: Math.round(1 / chance) }) : text('tenYearsOfTen', { n: Math.round(chance * 10) });
  return [text('storm', { years }), decade];
}

/** A negative freeboard is never a height: it is how long water stands over the sill. */
function heightTexts({ onTwin, lower, upper, minutesOverSill }: Freeboard): CodedText[] {
  if (onTwin < 0) return [text('over', { minutes: seconds(minutesOverSill) })];
  if (lower < 0) return [text('freeboard', { height: onTwin }), text('bandOver', { high: upper })];
  return [text('freeboard', { height: onTwin }), text('band', { low: lower, high: upper })];
}

function stillIn(document: DesignDocument, { results }: Evaluation): CodedText[] {
  const has = (kind: string) => document.system.parts.some((part) => part.kind === kind);
  return [
    text('stillIn.bigger'),
    ...(results.outage === null ? [] : [text('stillIn.power', { time: results.outage.longestSafe })]),
    ...(has('gutter') ? [text('stillIn.gutter')] : []),
    ...(has('channel') || has('catchBasin') ? [text('stillIn.leaves')] : []),
    text('stillIn.street'),
  ];
}

/** The two worst what-ifs are told unasked. */
function whatIfs(document: DesignDocument, { results }: Evaluation, { sill: id }: Freeboard): CodedText[] {
  const sill = document.site.sills.find((one) => one.id === id);
  if (sill === undefined) return [];
  const has = (kind: string) => document.system.parts.some((part) => part.kind === kind);
  const asked = [...(has('pump') ? (['powerOut'] as const) : []), ...(has('gutter') ? (['gutterOverflowing'] as const) : [])];
  return asked.flatMap((what) => {
    const member = results.family.find((one) => one.case === what && one.returnPeriod === document.rain.designReturnPeriod);
    return member === undefined ? [] : [whatIf(what, member, sill)];
  });
}

function whatIf(what: FamilyCase, member: FamilyMember, sill: Sill): CodedText {
  const stem = what === 'powerOut' ? 'powerOut' : 'gutter';
  return member.minutesOverSill > 0 ? text(`${stem}.over`, { minutes: seconds(member.minutesOverSill) }) : text(`${stem}.below`, { height: Math.max(0, sill.level - member.maxLevel) });
}

function measured({ site }: DesignDocument, { results }: Evaluation): CodedText[] {
  const volume = results.lowSpots[0]?.volumeToSill ?? 0;
  return [
    ...(site.spotLevels.length > 0 ? [text('measured.levels', { n: site.spotLevels.length })] : []),
    ...(volume > 0 ? [text('measured.lowSpot', { volume })] : []),
    ...(site.existingDrains.length > 0 ? [text('measured.drain')] : []),
    ...(site.soil.infiltrationRate === null ? [] : [text('measured.soil')]),
  ];
}

function guessed(document: DesignDocument): CodedText[] {
  return [
    ...(document.site.catchments.length > 0 ? [text('guessed.runoff')] : []),
    ...(document.site.soil.infiltrationRate === null ? [text('guessed.soil')] : []),
    ...(document.construction.slabCuts.length > 0 ? [text('guessed.slab')] : []),
    ...(document.rain.table.illustrative ? [text('guessed.rain')] : []),
  ];
}

/** What leaves the basin at its lowest level: the weep hole's water comes back, and the pump-down does not count it either. */
function promise({ results }: Evaluation): CodedText {
  const pump = results.pumps[0];
  return pump === undefined ? text('promise.gravity') : text('promise.pump', { flow: Math.max(0, pump.dutyAtOff.flow - pump.weepFlow), within: PUMP_DOWN_LIMITS.pass });
}
