export { runningEmbeddedPostgres } from './running.ts';
export {
  type EmbeddedPostgres,
  type EmbeddedPostgresOptions,
  startEmbeddedPostgres,
} from './start.ts';
