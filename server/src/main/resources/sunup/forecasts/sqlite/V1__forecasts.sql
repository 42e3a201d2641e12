-- What the board said of each room 60, 40, 20 and 10 minutes before its target; never changed.
CREATE TABLE forecasts_note (
  suite TEXT NOT NULL, morning TEXT NOT NULL, room TEXT NOT NULL,
  case_id TEXT NOT NULL, target INTEGER NOT NULL, minutes_before INTEGER NOT NULL,
  epoch INTEGER NOT NULL, body TEXT NOT NULL,
  PRIMARY KEY (suite, morning, room, case_id, target, minutes_before));
