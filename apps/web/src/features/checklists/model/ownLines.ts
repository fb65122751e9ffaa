import { ownLineAnswer, ownLineOf, privateQuestions, type FieldFact, type PrivateLines, type PrivateQuestion, type PrivateState } from '@yardfall/contracts';

type Lines = PrivateLines['lines'];

/** The homeowner's lines as the office knows them, with what was told at the step; what was heard later counts. */
export function linesNow(known: Lines | undefined, told: readonly FieldFact[]): Lines {
  const here = new Map(told.flatMap((fact) => {
    const answer = fact.kind === 'written' ? ownLineAnswer(fact) : null;
    return answer === null ? [] : [[answer.question, { state: answer.state, at: fact.deviceTime }] as const];
  }));
  return privateQuestions.map((question) => {
    const line = known?.find((one) => one.question === question) ?? { question, state: 'unknown' as const, note: '', on: null, photoId: null, at: null, by: '' };
    const said = here.get(question);
    const later = said !== undefined && (line.at === null || Date.parse(line.at) <= Date.parse(said.at));
    return later ? { ...line, state: said.state } : line;
  });
}

/** The line that a text of the requirement asks about. */
export function linesAsked(texts: readonly string[] | undefined) {
  return (texts ?? []).flatMap((name) => {
    const question = ownLineOf(name);
    return question === null ? [] : [{ name, question }];
  });
}

/** A line is there or not; a locator has been or not. */
export function ownLineWords(question: PrivateQuestion, state: PrivateState) {
  return question === 'locator' ? (`checklists.private.did.${state}` as const) : (`checklists.private.is.${state}` as const);
}
