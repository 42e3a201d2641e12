-- Names sort by their bytes, as SQLite sorts them, whatever the database's language is.
CREATE TABLE head (
  suite text COLLATE "C" NOT NULL, morning text COLLATE "C" NOT NULL, epoch bigint NOT NULL,
  seq bigint NOT NULL, chain bytea NOT NULL,
  PRIMARY KEY (suite, morning));

-- bytea keeps bytes as they are; a type that reads JSON would write them anew.
CREATE TABLE event (
  suite text COLLATE "C" NOT NULL, morning text COLLATE "C" NOT NULL, seq bigint NOT NULL,
  epoch bigint NOT NULL, bytes bytea NOT NULL,
  PRIMARY KEY (suite, morning, seq));

CREATE TABLE receipt (
  suite text COLLATE "C" NOT NULL, morning text COLLATE "C" NOT NULL, command_id text NOT NULL,
  payload_hash bytea NOT NULL, from_seq bigint NOT NULL, to_seq bigint NOT NULL,
  refusal_code text, refusal_words text,
  PRIMARY KEY (suite, morning, command_id));

CREATE TABLE private (
  ref text NOT NULL PRIMARY KEY, suite text COLLATE "C" NOT NULL,
  morning text COLLATE "C" NOT NULL, key bytea NOT NULL, value bytea NOT NULL,
  erase_after bigint NOT NULL);

CREATE INDEX private_of ON private (suite, morning);
CREATE INDEX private_due ON private (erase_after);
