export { causes as diagnosisCauses, type CauseId } from './causes.ts';
export { diagnose, stepOf, type Diagnosis, type DiagnosisAnswers, type NamedCause, type NamedReferral } from './diagnose.ts';
export { referrals as diagnosisReferrals, type ReferralId } from './referrals.ts';
export { diagnosisStepIds, diagnosisSteps, notDone } from './steps.ts';
export { pitOverWater, systemChoice, systemKinds, type SystemFacts, type SystemKind } from './system.ts';
export { callees, stepFamilies, type Callee, type DiagnosisStep, type ReferWeight, type StepAnswer, type StepCaution, type StepFamily, type StepTool } from './types.ts';
