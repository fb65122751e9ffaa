export { Members } from './components/Members.tsx';
export { CompanyRecord } from './components/CompanyRecord.tsx';
