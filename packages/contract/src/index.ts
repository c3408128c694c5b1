export * from './calc/index.ts';
export * from './commands.ts';
export * from './events/index.ts';
export * from './import.ts';
export * from './primitives.ts';
export * from './reads/index.ts';
export * from './session.ts';
export * from './simulation.ts';
