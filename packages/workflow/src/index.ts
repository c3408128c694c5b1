export * from './context.ts';
export * from './state.ts';
export * from './shifts.ts';
export * from './register-reading/index.ts';
export * from './bolt-plan/index.ts';
