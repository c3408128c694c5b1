export * from "./events/index.ts";
export * from "./primitives.ts";
