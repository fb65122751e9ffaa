export * from './access.ts';
export * from './common.ts';
export * from './endpoint.ts';
export * from './identity.ts';
export * from './problem.ts';
