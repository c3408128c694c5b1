-- Answers to the questions of an import, by their key, offered at the next file with these headers.
ALTER TABLE import_mapping ADD COLUMN answers JSONB NOT NULL DEFAULT '{}';
