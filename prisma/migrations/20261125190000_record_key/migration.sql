-- Public keys of those that signed heads of this database's record, in the order of their time; the last one signs.
-- The private parts are never here.
CREATE TABLE "record_key" (
    "number" INTEGER NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "public_key" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "record_key_pkey" PRIMARY KEY ("number")
);

CREATE UNIQUE INDEX "record_key_fingerprint_key" ON "record_key"("fingerprint");

-- A key that signed stays known, so that what it signed can be told from what it did not.
CREATE TRIGGER record_key_append_only BEFORE UPDATE OR DELETE ON record_key
  FOR EACH ROW EXECUTE FUNCTION record_is_append_only();
CREATE TRIGGER record_key_no_truncate BEFORE TRUNCATE ON record_key
  FOR EACH STATEMENT EXECUTE FUNCTION record_is_append_only();
