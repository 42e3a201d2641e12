-- Files from before there were migrations hold these tables already and are taken as they are.
CREATE TABLE IF NOT EXISTS head (
  suite TEXT NOT NULL, morning TEXT NOT NULL, epoch INTEGER NOT NULL,
  seq INTEGER NOT NULL, chain BLOB NOT NULL,
  PRIMARY KEY (suite, morning)) WITHOUT ROWID;

CREATE TABLE IF NOT EXISTS event (
  suite TEXT NOT NULL, morning TEXT NOT NULL, seq INTEGER NOT NULL,
  epoch INTEGER NOT NULL, bytes BLOB NOT NULL,
  PRIMARY KEY (suite, morning, seq));

CREATE TABLE IF NOT EXISTS receipt (
  suite TEXT NOT NULL, morning TEXT NOT NULL, command_id TEXT NOT NULL,
  payload_hash BLOB NOT NULL, from_seq INTEGER NOT NULL, to_seq INTEGER NOT NULL,
  refusal_code TEXT, refusal_words TEXT,
  PRIMARY KEY (suite, morning, command_id)) WITHOUT ROWID;

CREATE TABLE IF NOT EXISTS private (
  ref TEXT NOT NULL PRIMARY KEY, suite TEXT NOT NULL, morning TEXT NOT NULL,
  key BLOB NOT NULL, value BLOB NOT NULL, erase_after INTEGER NOT NULL);

CREATE INDEX IF NOT EXISTS private_of ON private (suite, morning);
CREATE INDEX IF NOT EXISTS private_due ON private (erase_after);
