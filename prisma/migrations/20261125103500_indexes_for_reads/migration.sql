-- Indexes that only reads need. Prisma's schema cannot say "where", so they are beside it, as the other extra_ ones.

-- The register's headline: "6 without a target, 14 found". The first has the words of WITHOUT_TARGET
-- (features/joints/register-filters.ts); with other words PostgreSQL would not use it.
CREATE INDEX extra_joint_without_target ON joint (site_id, shutdown_id)
  WHERE voided IS NULL AND ((stage_rank = 0 AND work_scope <> 'test-only') OR waits_for = 'target');
CREATE INDEX extra_joint_found ON joint (site_id, shutdown_id) WHERE voided IS NULL AND found;

-- What is due by now: of tens of thousands of makes only those that a relaxation pass is still asked of.
CREATE INDEX extra_make_relaxation_due ON make (site_id, shutdown_id, relaxation_due_at)
  WHERE relaxation_due_at IS NOT NULL;

-- The work of the last shift. Events are appended in the order of this time, so a summary of each stretch will do.
CREATE INDEX extra_event_recorded_at ON event USING brin (recorded_at);
