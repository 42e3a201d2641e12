-- What the board said of each room 60, 40, 20 and 10 minutes before its target; never changed.
CREATE TABLE forecasts_note (
  suite text COLLATE "C" NOT NULL, morning text COLLATE "C" NOT NULL, room text COLLATE "C" NOT NULL,
  case_id text COLLATE "C" NOT NULL, target bigint NOT NULL, minutes_before bigint NOT NULL,
  epoch bigint NOT NULL, body text NOT NULL,
  PRIMARY KEY (suite, morning, room, case_id, target, minutes_before));
