export { differences, type SurveyDraft } from './differences.ts';
export { foldSurvey, type FoldedEntry, type FoldedSurvey, type JudgedSurveyFact, type SurveyChoice, type SurveyEntry, type SurveyValues } from './fold.ts';
export { entryKind, surveyEntryKinds, type SurveyEntryKind } from './keys.ts';
