export * from './bolt-plan/index.ts';
export * from './context.ts';
export * from './register-reading/index.ts';
export * from './shifts.ts';
export * from './state.ts';
