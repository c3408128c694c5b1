export * from './context.ts';
export * from './state.ts';
