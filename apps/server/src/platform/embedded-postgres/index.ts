export {
  type EmbeddedPostgres,
  type EmbeddedPostgresOptions,
  startEmbeddedPostgres,
} from './start.ts';
