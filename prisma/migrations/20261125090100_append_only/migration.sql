-- The record is append-only for everyone who connects, whatever their grants: role app has no right to
-- update or delete either (platform/database/roles.ts), and where one role must do everything this still holds.
CREATE FUNCTION record_is_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'The record is append-only: % of % is refused.', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'insufficient_privilege',
          HINT = 'Record a correction or a revocation instead; both stay visible.';
END
$$;

CREATE TRIGGER event_append_only BEFORE UPDATE OR DELETE ON event
  FOR EACH ROW EXECUTE FUNCTION record_is_append_only();
CREATE TRIGGER event_no_truncate BEFORE TRUNCATE ON event
  FOR EACH STATEMENT EXECUTE FUNCTION record_is_append_only();
CREATE TRIGGER event_row_append_only BEFORE UPDATE OR DELETE ON event_row
  FOR EACH ROW EXECUTE FUNCTION record_is_append_only();
CREATE TRIGGER event_row_no_truncate BEFORE TRUNCATE ON event_row
  FOR EACH STATEMENT EXECUTE FUNCTION record_is_append_only();

-- Today asks for these few among many.
CREATE INDEX extra_joint_part_tight ON joint (site_id, shutdown_id) WHERE stage = 'part-tight' AND voided IS NULL;
CREATE INDEX extra_joint_flags ON joint USING gin (flags) WHERE voided IS NULL;
CREATE INDEX extra_joint_packs ON joint USING gin (pack_ids);
CREATE INDEX extra_punch_open ON punch_item (site_id, shutdown_id, category) WHERE closed_at IS NULL;
CREATE INDEX extra_event_review ON event (site_id, stream_id, sequence) WHERE cardinality(review_codes) > 0;
CREATE INDEX extra_make_crew_tight ON make (site_id, shutdown_id, tight_at);
CREATE INDEX extra_event_passes ON event (site_id, stream_id, work_time)
  WHERE type IN ('pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded');
