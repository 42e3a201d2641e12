-- Phones that are told when something is asked of whoever is signed on at them, by their browser's
-- push service. Gone with the sign-on.
CREATE TABLE access_push (
  sign_on text NOT NULL PRIMARY KEY, endpoint text NOT NULL, public_key bytea NOT NULL,
  auth bytea NOT NULL, made_at bigint NOT NULL);
