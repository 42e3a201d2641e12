-- Phones that are told when something is asked of whoever is signed on at them, by their browser's
-- push service. Gone with the sign-on.
CREATE TABLE access_push (
  sign_on TEXT NOT NULL PRIMARY KEY, endpoint TEXT NOT NULL, public_key BLOB NOT NULL,
  auth BLOB NOT NULL, made_at INTEGER NOT NULL);
